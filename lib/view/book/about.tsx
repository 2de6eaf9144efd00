import browser from 'webextension-polyfill'
import { say } from '../../words/say.ts'

export function About() {
  return (
    <section class="group">
      <h2>{say`About`}</h2>
      <p>
        {say`Gapsum ${browser.runtime.getManifest().version} reduces air-leakage readings of houses and ducts, fills them into forms that you mapped, and keeps this book. It asks nothing of any network: what you type stays on this machine.`}
      </p>
      <p>
        {say`It computes and records; it certifies nothing. A figure is as good as its readings, and the local code and licensed practice come first.`}
      </p>
    </section>
  )
}
