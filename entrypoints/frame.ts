import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { endShape, marksShape, writeShape } from '../lib/messages/message-shapes.ts'
import { isApart, serve } from '../lib/view/helper/agent.ts'
import { offerExtra } from '../lib/form/kinds/write-extra.ts'
import css from '../lib/view/helper/marks.css?inline'
import { hear, once } from '../lib/view/helper/once.ts'

export default defineUnlistedScript({
  main() {
    // The page around a frame of its own origin reaches into it by itself.
    if (!isApart()) return
    once('frame', (life) => {
      offerExtra()
      const agent = serve(css, life.signal)
      hear(
        {
          write: [writeShape, ({ key, text }) => agent.write(key, text)],
          marks: [marksShape, agent.mark],
          end: [endShape, () => life.abort()],
        },
        life.signal,
      )
      return agent.tell
    })
  },
})
