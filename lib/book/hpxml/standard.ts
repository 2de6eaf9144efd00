/** Names that HPXML fixes. */
export const namespace = 'http://hpxmlonline.com/2023/09'
export const schemaVersion = '4.2'
/** Versions that share the namespace and these elements. */
export const readable: readonly string[] = ['4.0', '4.1', '4.2']

export const eventTypes = [
  'audit',
  'proposed workscope',
  'approved workscope',
  'construction-period testing/daily test out',
  'job completion testing/final inspection',
  'quality assurance/monitoring',
  'preconstruction',
] as const
