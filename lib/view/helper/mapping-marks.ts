import type { Material } from '../../form/material.ts'
import { boundTo } from './describe.ts'
import type { Mark } from './marks.tsx'
import type { PageControls } from './use-controls.ts'
import { say } from '../../words/say.ts'

/** The outlines while mapping. */
export function mappingMarks(
  page: PageControls,
  material: Material,
  picked: string | undefined,
  pointed: string | undefined,
): Mark[] {
  const marks = page.controls.map(({ key, control, binding, twin }, index): Mark => {
    const { elements } = control
    const number = index + 1
    if (key === picked) return { id: key, elements, look: 'now', tag: say`${number} this one` }
    if (binding) {
      const tag = twin ? say`${number} which of two?` : `${number} ${boundTo(binding.source, material)}`
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
