// What holds it has no height any more.
field.parentElement.style.cssText = 'height:0;margin:0;overflow:hidden'
