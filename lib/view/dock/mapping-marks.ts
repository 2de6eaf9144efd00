import type { FarMark } from '../../form/page/image.ts'
import type { PageControls } from './use-controls.ts'
import { say } from '../../words/say.ts'

/** The outlines while mapping. They stand in the page, which may read them: numbers, and nothing of what is bound. */
export function mappingMarks(page: PageControls, picked: string | undefined, pointed: string | undefined): FarMark[] {
  return page.controls.map(({ key, binding, twin }, index): FarMark => {
    const number = index + 1
    if (key === picked) return { key, look: 'now', tag: say`${number} this one` }
    if (binding) {
      const tag = twin ? say`${number} which of two?` : String(number)
      return { key, look: twin ? 'two' : key === pointed ? 'lit' : 'bound', tag }
    }
    return { key, look: key === pointed ? 'lit' : 'free', tag: key === pointed ? String(number) : '' }
  })
}
