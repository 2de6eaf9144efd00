interface Window {
  /** What the page itself holds, apart from what its controls show. */
  pageState: () => unknown
}
declare module '*.svelte' {
  const component: import('svelte').Component<Record<string, never>>
  export default component
}
declare module '*.css'
declare module 'inputmask'
declare module 'select2'
declare module 'jquery'
declare module 'slim-select/styles'
declare module '@yaireo/tagify'
