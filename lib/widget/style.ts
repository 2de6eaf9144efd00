/** One style sheet for all widgets of a page: adopted, so that a strict content security policy has nothing to forbid. */
import base from '../view/parts/base.css?inline'
import cells from '../view/calculator/cells.css?inline'
import readings from '../view/calculator/readings.css?inline'
import touch from '../view/calculator/touch.css?inline'
import figure from '../view/figure/figure.css?inline'
import paper from '../view/parts/paper.css?inline'
import tokens from '../view/parts/tokens.css?inline'
import own from './widget.css?inline'

/** The tokens that a page may set, as --gapsum-accent and so on. */
export const themed = [
  'paper',
  'surface',
  'ink',
  'ink-2',
  'rule',
  'field',
  'accent',
  'on-accent',
  'wash',
  'doubt',
  'bad',
  'focus',
  'sans',
  'serif',
  'radius',
]

/** Sizes hang on the host's --gapsum-size, not on the page's root; conditions on a width can only hang on the root. */
function adapt(text: string): string {
  return text.replaceAll(/(?<!\((?:m(?:ax|in)-)?width ?(?:[<>]=|:) ?|[\w.-])(\d*\.?\d+)rem\b/g, 'calc($1*var(--u))')
}

/** Tokens stand on `.root`, each behind the name that a page may set. */
function themable(text: string): string {
  return text
    .replaceAll(/:root(\S*?),\s*:host(?:\(\S*?\))?(?=[\s{])/g, '.root$1')
    .replaceAll(/(?<=[{;]\s*)--([\w-]+):\s*([^;}]+)/g, (whole, name: string, value: string) =>
      themed.includes(name) ? `--${name}:var(--gapsum-${name},${value})` : whole,
    )
}

let sheet: CSSStyleSheet | undefined

export function styleSheet(): CSSStyleSheet {
  if (!sheet) {
    sheet = new CSSStyleSheet()
    sheet.replaceSync(adapt(themable(tokens) + base + paper + figure + cells + readings + touch) + own)
  }
  return sheet
}
