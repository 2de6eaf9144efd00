/** Texts of the manifest, which names its messages itself. */
export const manifestWords = {
  name: 'Gapsum',
  description:
    'Air-leakage figures from your readings, filled into any web form you map, with a record of every entry. Nothing leaves this machine.',
  beside: 'Keep the calculator beside the page',
  fill: 'Show the plan for the form on this page',
}

/** A text as the manifest names it. */
export const named = (key: keyof typeof manifestWords): string => `__MSG_${key}__`
