import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { frameShape, mapShape, pickedShape } from '../../lib/message-shapes.ts'
import { hearFrame } from '../../lib/view/helper/hear-frame.ts'
import { Mapping } from '../../lib/view/helper/mapping.tsx'
import { hear, once } from '../../lib/view/helper/once.ts'
import { handOver, stage } from '../../lib/view/helper/stage.tsx'
import { takePick } from '../../lib/view/helper/use-far-pick.ts'
import css from './style.css?inline'

// Apart from what fills: a page is mapped once and filled often.
export default defineUnlistedScript({
  main() {
    once('mapping', ({ signal }) => {
      const show = stage<'map'>(css, signal, ({ material, map }, place) => (
        <Mapping
          material={material}
          map={map}
          onPlan={(made) => handOver({ type: 'plan', material, map: made }, place)}
        />
      ))
      hear({ map: [mapShape, show], frame: [frameShape, hearFrame], picked: [pickedShape, takePick] }, signal)
      return undefined
    })
  },
})
