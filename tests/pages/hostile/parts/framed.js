// A frame of the page lies over it.
const frame = document.createElement('iframe')
const { left, top, width, height } = field.getBoundingClientRect()
frame.style.cssText = `position:absolute;left:${left + scrollX - 4}px;top:${top + scrollY - 4}px;width:${width + 8}px;height:${height + 8}px;border:0;background:#fff;pointer-events:none`
document.body.append(frame)
