/** The number of a climate zone as people write it: 5, '5A', 'CZ 4C', 'zone 3'. */
export function zoneNumber(text: string | number | undefined): number | undefined {
  const found = /(?:^|[^\d.])([0-8])\s*[a-c]?$/i.exec(String(text ?? '').trim())
  return found ? Number(found[1]) : undefined
}
