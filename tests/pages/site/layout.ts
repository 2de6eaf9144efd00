/** The frame of every page of the invented office: head, title, foot. */

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

export function escape(text: string): string {
  return text.replaceAll(/[&<>"]/g, (character) => entities[character] ?? character)
}

export interface Layout {
  title: string
  lead: string
  main: string
  script: string
}

export function layout({ title, lead, main, script }: Layout): string {
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>${escape(title)} - Larch County Home Comfort Office</title>
    <link rel="icon" href="data:," />
    <link rel="stylesheet" href="/style.css" />
    <script type="module" src="${script}"></script>
  </head>
  <body>
    <header class="office">
      <a href="/">Larch County Home Comfort Office</a>
      <span>Signed in: Bellwether Lane Testing</span>
    </header>
    <main>
      <h1>${escape(title)}</h1>
      <p class="lead">${escape(lead)}</p>
      ${main}
    </main>
    <footer>An invented office, for trying out software. Nothing entered here leaves this machine.</footer>
  </body>
</html>
`
}
