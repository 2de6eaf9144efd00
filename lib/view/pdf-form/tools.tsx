import { h, type ComponentChildren } from 'preact'

/** Holds what belongs to the extension, not to the form: the helper takes none of it for a control of the page. */
export const Tools = ({ name, children }: { name: string; children: ComponentChildren }) =>
  h('gapsum-tools', { class: name }, children)
