import { render } from 'preact'
import type { ToDock } from '../../lib/messages/dock-messages.ts'
import { App } from '../../lib/view/dock/app.tsx'
import { awaitHelper } from '../../lib/view/dock/wire.ts'
import { keepFocus } from '../../lib/view/parts/keep-focus.ts'
import { say } from '../../lib/words/say.ts'

document.documentElement.lang = say`en`
keepFocus(() => document.hasFocus())
awaitHelper((tell) => {
  const draws: { take?: (message: ToDock) => void } = {}
  const listen = (take: (message: ToDock) => void) => {
    draws.take = take
  }
  render(<App tell={tell} listen={listen} />, document.getElementById('root')!)
  return (message) => draws.take?.(message)
})
