/** What to see to before a house is put under pressure. The usual cautions of the trade; local rules come first. */
import { say } from '../../words/say.ts'

export function Cautions() {
  return (
    <ul class="cautions">
      <li>{say`Solid-fuel fires are fully out, and ashes covered, before you depressurize.`}</li>
      <li>{say`Combustion appliances are off or on pilot so that they cannot fire. Put them back when you leave.`}</li>
      <li>
        {say`Possible asbestos (vermiculite), heavy mould, lead dust, sewer gas from dry traps, radon or fumes of an attached garage: pressurize, or do not test.`}
      </li>
      <li>{say`Ask whether someone ill lives here before you start.`}</li>
      <li>{say`After tightening, combustion safety and ventilation are checked.`}</li>
      <li>{say`Never leave a house before everything is set back.`}</li>
      <li>{say`Local codes and licensed practice come first. This tool computes and records; it certifies nothing.`}</li>
    </ul>
  )
}
