/** The little of jstat that is measured; the package brings no types. */
declare module 'jstat' {
  const jstat: { models: { ols(ys: number[], xs: number[][]): { coef: number[] } } }
  export default jstat
}
