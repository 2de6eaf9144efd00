// Turned so that one sees it from its edge.
field.style.transform = 'rotateX(90deg)'
