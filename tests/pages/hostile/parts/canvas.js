// A drawing of the page lies over it.
const drawing = document.createElement('canvas')
const { left, top, width, height } = field.getBoundingClientRect()
drawing.style.cssText = `position:absolute;left:${left + scrollX - 4}px;top:${top + scrollY - 4}px;width:${width + 8}px;height:${height + 8}px;pointer-events:none`
document.body.append(drawing)
