// Above the window, where no scrolling leads.
field.style.cssText = 'position:fixed;top:-500px'
