import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { frameShape, planShape } from '../../lib/message-shapes.ts'
import { hearFrame } from '../../lib/view/helper/hear-frame.ts'
import { hear, once } from '../../lib/view/helper/once.ts'
import { PlanScreen } from '../../lib/view/helper/plan-screen.tsx'
import { handOver, stage } from '../../lib/view/helper/stage.tsx'
import { noteLeft } from '../../lib/view/helper/use-fill.ts'
import css from './style.css?inline'

// Not a content script of the framework: that one announces itself to the page at every injection.
export default defineUnlistedScript({
  main() {
    once('helper', ({ signal }) => {
      const show = stage<'plan'>(css, signal, ({ material, map }, place) => (
        <PlanScreen material={material} map={map} onMap={() => handOver({ type: 'map', material, map }, place)} />
      ))
      void noteLeft()
      hear({ plan: [planShape, show], frame: [frameShape, hearFrame] }, signal)
      return undefined
    })
  },
})
