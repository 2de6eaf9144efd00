import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { isApart, serve } from '../lib/view/helper/agent.ts'
import { hear, once } from '../lib/view/helper/once.ts'

export default defineUnlistedScript({
  main() {
    // The page around a frame of its own origin reaches into it by itself.
    if (!isApart()) return
    once('frame', (life) => {
      const agent = serve(life.signal)
      hear(
        ['write', 'end'],
        (message) => (message.type === 'write' ? agent.write(message.key, message.text) : life.abort()),
        life.signal,
      )
      return agent.tell
    })
  },
})
