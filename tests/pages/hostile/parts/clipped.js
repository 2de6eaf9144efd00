// Cut to a circle of no size by what is around it.
field.parentElement.style.clipPath = 'circle(0)'
