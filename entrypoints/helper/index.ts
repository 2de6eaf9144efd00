import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { frameShape, mapShape, pickedShape, planShape } from '../../lib/messages/message-shapes.ts'
import { hearFrame } from '../../lib/view/helper/hear-frame.ts'
import { clearLeft } from '../../lib/view/helper/gone.ts'
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
      clearLeft()
      const show = stage(css, signal, { plan: planPart, map: mapPart })
      hear(
        {
          plan: [
            planShape,
            (task) => {
              void noteLeft()
              return show(task)
            },
          ],
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
