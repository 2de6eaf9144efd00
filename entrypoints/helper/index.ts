import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { frameShape, mapShape, pickedShape, planShape } from '../../lib/message-shapes.ts'
import { hearFrame } from '../../lib/view/helper/hear-frame.ts'
import { noteLeft } from '../../lib/view/helper/late.ts'
import { mapPart, takePick } from '../../lib/view/helper/map-part.ts'
import css from '../../lib/view/helper/marks.css?inline'
import { hear, once } from '../../lib/view/helper/once.ts'
import { planPart } from '../../lib/view/helper/plan-part.ts'
import { stage } from '../../lib/view/helper/stage.ts'

// Not a content script of the framework: that one announces itself to the page at every injection.
export default defineUnlistedScript({
  main() {
    once('helper', ({ signal }) => {
      const show = stage(css, signal, { plan: planPart, map: mapPart })
      void noteLeft()
      hear(
        {
          plan: [planShape, show],
          map: [mapShape, show],
          frame: [frameShape, hearFrame],
          picked: [pickedShape, takePick],
        },
        signal,
      )
      return undefined
    })
  },
})
