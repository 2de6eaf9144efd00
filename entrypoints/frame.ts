import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { endShape, writeShape } from '../lib/message-shapes.ts'
import { isApart, serve } from '../lib/view/helper/agent.ts'
import { hear, once } from '../lib/view/helper/once.ts'

export default defineUnlistedScript({
  main() {
    // The page around a frame of its own origin reaches into it by itself.
    if (!isApart()) return
    once('frame', (life) => {
      const agent = serve(life.signal)
      hear(
        {
          write: [writeShape, ({ key, text }) => agent.write(key, text)],
          end: [endShape, () => life.abort()],
        },
        life.signal,
      )
      return agent.tell
    })
  },
})
