// The old way to cut an element off.
field.style.cssText = 'position:absolute;clip:rect(0 0 0 0)'
