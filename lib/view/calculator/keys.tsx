import { useEffect, useState } from 'preact/hooks'
import { browser } from '../../browser.ts'
import { say } from '../../words/say.ts'

const names: Record<string, string> = {
  _execute_action: say`Open the calculator`,
  beside: say`Keep it beside the page`,
  fill: say`Show the plan for the form on this page`,
}

/** The keys as the browser has them now, and those of the readings. */
export function Keys() {
  const [commands, setCommands] = useState<{ name: string; keys: string }[]>([])
  useEffect(() => {
    void browser.commands.getAll().then((all) =>
      setCommands(
        all.flatMap(({ name, shortcut }) => {
          const said = name === undefined ? undefined : names[name]
          return said === undefined ? [] : [{ name: said, keys: shortcut || say`no key set` }]
        }),
      ),
    )
  }, [])
  const own = [
    { name: say`Next reading below, above`, keys: say`Enter, Shift+Enter, arrows` },
    { name: say`From figure to figure`, keys: say`arrows` },
    { name: say`From point to point of the plot`, keys: say`arrows` },
    { name: say`Order of a pinned figure`, keys: say`Alt+arrow up, down` },
  ]
  return (
    <>
      <dl class="keys">
        {[...commands, ...own].map(({ name, keys }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <kbd>{keys}</kbd>
            </dd>
          </div>
        ))}
      </dl>
      <p class="q small">{say`The first three are changed in the browser, under the shortcuts of its extensions.`}</p>
    </>
  )
}
