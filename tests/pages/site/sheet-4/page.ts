import { layout } from '../layout.ts'

/** Sheet 4 of a building permit: an empty place that the React form is drawn into. */
export function sheet4(permit: string): string {
  return layout({
    title: `Permit ${permit}, sheet 4`,
    lead: 'Air tightness of the enclosure and of the ducts.',
    script: '/sheet-4/main.js',
    main: '<div id="sheet"></div>',
  })
}
