# Writes form-q.pdf beside this file: a form by another producer (Debian: python3-reportlab), in the invented county.
from pathlib import Path
from reportlab.lib.pagesizes import letter
from reportlab.pdfgen.canvas import Canvas

pen = Canvas(str(Path(__file__).with_suffix('.pdf')), pagesize=letter, invariant=1)
pen.setTitle('Form LC-7Q')
pen.setFont('Helvetica-Bold', 13)
pen.drawString(54, 740, 'Part A. Building')
pen.setFont('Helvetica', 10)
form = pen.acroForm
for at, (label, name, tip) in enumerate([
    ('Street address:', 'q1', ''),
    ('Permit no.', 'q2', 'Permit number'),
    ('Floor area, ft2', 'q3', ''),
]):
    y = 700 - 28 * at
    pen.drawString(54, y + 5, label)
    form.textfield(name=name, tooltip=tip or None, x=220, y=y, width=180, height=18, borderWidth=1, forceBorder=True)
pen.drawString(54, 600, 'Kind of test')
form.choice(name='q4', value='Final', options=['Rough-in', 'Final'], x=220, y=594, width=120, height=18, forceBorder=True)
pen.drawString(54, 568, 'Result')
for at, (value, label) in enumerate([('v1', 'Pass'), ('v2', 'Fail')]):
    form.radio(name='q5', value=value, x=220 + 80 * at, y=564, size=14, forceBorder=True)
    pen.drawString(240 + 80 * at, 568, label)
form.checkbox(name='q6', x=220, y=536, size=14, forceBorder=True)
pen.drawString(240, 540, 'House has an attached garage')
pen.save()
