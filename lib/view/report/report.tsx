import { IntervalBar } from '../figure/interval-bar.tsx'
import { IntervalDrawing } from '../figure/interval-drawing.tsx'
import type { FigureLine } from '../../results/shown.ts'
import { outcomeShape } from '../figure/outcome-mark.tsx'
import { PageIcon } from '../parts/page-icons.tsx'
import type { Content } from '../../report/content.ts'
import { BarsDrawing } from '../plot/bars-drawing.tsx'
import { say, shown } from '../../words/say.ts'
import { PlotDrawing } from '../plot/plot-drawing.tsx'

/** The report of a test on one page. */
export function Report({ content }: { content: Content }) {
  const { title, address, role, tested, facts, plot } = content
  return (
    <article class="sheet-page" aria-label={title}>
      <header class="hd">
        <div>
          <h2>{title}</h2>
          <p>{say`${address}. Test: ${role}.`}</p>
        </div>
        <p>
          {tested}
          <br />
          {say`Page 1 of 1`}
        </p>
      </header>
      <dl class="facts">
        {facts.map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <Verdict content={content} />
      <div class="two">
        <Readings content={content} />
        {plot ? <PlotDrawing plot={plot} /> : <p class="q">{say`No curve to draw.`}</p>}
      </div>
      {content.bars && (
        <section class="work">
          <h3>
            {say`Before and after`} <small>{content.bars.title}</small>
          </h3>
          <BarsDrawing bars={content.bars} />
        </section>
      )}
      <Figures content={content} />
      <Sentences title={say`Tests together`} texts={content.several} />
      <Sentences title={say`Zones beside the house`} texts={content.zones} />
      <Sentences title={say`Notes`} texts={content.notes} />
      <Checks content={content} />
      <p class="cau">{content.cautions}</p>
      <Signature content={content} />
    </article>
  )
}

function Verdict({ content: { verdict, waiting } }: { content: Content }) {
  if (!verdict) {
    return (
      <section class="vd" aria-label={say`Verdict`}>
        <p>{say`No figures yet. ${waiting}`}</p>
      </section>
    )
  }
  const { value, margin, unit, interval, drawn, likely, reach, notes, source } = verdict
  return (
    <section class="vd" aria-label={say`Verdict`}>
      <span class="y">
        {value}
        <small>
          {margin && `${margin.startsWith('−') ? '' : '± '}${margin} `}
          {unit}
        </small>
      </span>
      <div>
        {verdict.verdict && (
          <b class={verdict.verdict.meets ? 'w' : 'w not'}>
            <PageIcon name={verdict.verdict.meets ? 'good' : 'bad'} />
            {verdict.verdict.text}
          </b>
        )}
        <p>{[likely, reach, ...notes, source].filter(Boolean).join(' ')}</p>
      </div>
      {interval && <IntervalDrawing {...interval} label={drawn} />}
    </section>
  )
}

function Readings({ content: { readings } }: { content: Content }) {
  const last = readings.heads.length
  return (
    <section>
      <h3>{say`Readings`}</h3>
      <table class="t">
        <thead>
          <tr>
            {readings.heads.map(([name, unit]) => (
              <th key={name} scope="col" class="num">
                {name === 'ΔP' ? (
                  <>
                    Δ<i class="v">P</i>
                  </>
                ) : (
                  name || <span class="vh">{say`Point`}</span>
                )}
                <br />
                {unit}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {readings.rows.map((cells) => (
            <tr key={cells[0]}>
              {cells.map((cell, at) => (
                <td key={readings.heads[at]?.[0]} class={at === 0 ? 'num q' : 'num'}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td colSpan={last}>
              {readings.foot.map((line) => (
                <span key={line}>{line}</span>
              ))}
            </td>
          </tr>
        </tfoot>
      </table>
    </section>
  )
}

function Figures({ content: { figures, figuresNote, limitHead } }: { content: Content }) {
  if (figures.length === 0) return null
  return (
    <section>
      <h3>
        {say`Figures `}
        <small>{figuresNote}</small>
      </h3>
      <table class="t fgt">
        <thead>
          <tr>
            <th scope="col">{say`Figure`}</th>
            <th scope="col" class="num">
              {say`Value`}
            </th>
            <th scope="col" class="num">
              ±
            </th>
            <th scope="col">{say`Unit`}</th>
            <th scope="col" class="li">
              {limitHead}
            </th>
          </tr>
        </thead>
        <tbody>
          {figures.map((line) => (
            <tr key={line.id}>
              <th scope="row">
                <Name line={line} />
              </th>
              <td class="num">
                <b>{line.value}</b>
              </td>
              <td class="num q">{line.margin}</td>
              <td class="q">{line.unit}</td>
              <td class="li">{line.span && <IntervalBar {...line.span} label={line.interval} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Name({ line: { name, detail } }: { line: FigureLine }) {
  return (
    <>
      {name} {detail.length === 1 ? <i class="v">{detail}</i> : <span class="q">{detail}</span>}
    </>
  )
}

function Sentences({ title, texts }: { title: string; texts: readonly string[] }) {
  if (texts.length === 0) return null
  return (
    <section>
      <h3>{title}</h3>
      {texts.map((text) => (
        <p key={text} class="rem">
          {text}
        </p>
      ))}
    </section>
  )
}

function Checks({ content: { checks, remarks } }: { content: Content }) {
  if (checks.length === 0) return null
  return (
    <section>
      <h3>{say`Checks`}</h3>
      <ul class="cks">
        {checks.map(({ id, outcome, name, found }) => (
          <li key={id} class={outcomeShape[outcome]}>
            <PageIcon name={outcomeShape[outcome]} />
            <span>
              {name}
              {outcome === 'good' ? <span class="vh">{say`, good`}</span> : `, ${shown(outcome)}`}
            </span>
            <span class="fd">{found}</span>
          </li>
        ))}
      </ul>
      {remarks.length > 0 && <p class="rem">{remarks.join(' ')}</p>}
    </section>
  )
}

function Signature({ content: { signer, fingerprint, record } }: { content: Content }) {
  return (
    <footer>
      <div class="sg">
        <div>
          <b />
          {say`Signature`}
        </div>
        <div>
          <b>{signer.name}</b>
          {signer.licence ? say`Printed name, licence ${signer.licence}` : say`Printed name`}
        </div>
        <div>
          <b />
          {say`Date`}
        </div>
      </div>
      <div class="fp">
        <span>
          {fingerprint.length > 0 && say`Fingerprint ${fingerprint.slice(0, 4).join(' ')}`}
          <br />
          {fingerprint.length > 4 && `${' '.repeat('Fingerprint '.length)}${fingerprint.slice(4).join(' ')}`}
        </span>
        <span>
          {record.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </span>
      </div>
    </footer>
  )
}
