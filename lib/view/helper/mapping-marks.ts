import type { Mark } from './marks.tsx'
import type { PageControls } from './use-controls.ts'
import { say } from '../../words/say.ts'

/** The outlines while mapping. They stand in the page, which may read them: numbers, and nothing of what is bound. */
export function mappingMarks(page: PageControls, picked: string | undefined, pointed: string | undefined): Mark[] {
  const marks = page.controls.map(({ key, control, binding, twin }, index): Mark => {
    const { elements } = control
    const number = index + 1
    if (key === picked) return { id: key, elements, look: 'now', tag: say`${number} this one` }
    if (binding) {
      const tag = twin ? say`${number} which of two?` : String(number)
      return { id: key, elements, look: twin ? 'two' : key === pointed ? 'lit' : 'bound', tag }
    }
    return { id: key, elements, look: key === pointed ? 'lit' : 'free', tag: key === pointed ? String(number) : '' }
  })
  const left = page.leftOut
    .filter(({ reason }) => reason !== 'hidden')
    .map(({ element }, index): Mark => ({
      id: `left-${index}`,
      elements: [element],
      look: 'left',
      tag: say`left to you`,
    }))
  return [...marks, ...left]
}
