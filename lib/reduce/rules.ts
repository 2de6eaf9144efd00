/** The standard that a procedure follows, by its name; none for one point. */
export const rules: Readonly<Record<string, string>> = {
  'two-point': 'ASTM E1827',
  'astm-e779': 'ASTM E779',
  'iso-9972': 'ISO 9972',
  'astm-e3158': 'ASTM E3158',
}
