// Drawn so small that nobody sees it; its place in the layout stays.
field.style.transform = 'scale(0.001)'
