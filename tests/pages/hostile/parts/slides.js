// Moved away within an animation that never ends.
field.animate([{ translate: '-9000px 0' }, { translate: '-9000px 0' }], { duration: 1000, iterations: Infinity })
