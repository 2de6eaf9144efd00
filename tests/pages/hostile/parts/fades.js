// Faded by an animation, past what its style says.
field.animate([{ opacity: 0 }, { opacity: 0 }], { duration: 1000, iterations: Infinity })
