/** What to see to before a house is put under pressure. Common practice, no source; local rules come first. */
import { say } from '../../words/say.ts'

/** `ducts`: whether a test of ducts is meant, or left out: either. */
export function Cautions({ ducts }: { ducts?: boolean }) {
  return (
    <ul class="cautions">
      <li>
        {say`Stop at once, fan off and doors open, at smoke, a gas smell, soot, an alarm, a flame drawn out, or anyone unwell.`}
      </li>
      <li>{say`Solid-fuel fires are fully out, and ashes covered, before you depressurize.`}</li>
      <li>
        {say`Combustion appliances are off or on pilot so that they cannot fire; unvented fuel heaters are off and cold. Put them back when you leave.`}
      </li>
      <li>{say`People, pets and children stay away from the fan and from doors that may slam.`}</li>
      <li>
        {say`Possible asbestos (vermiculite), heavy mould, lead dust, sewer gas from dry traps, radon or fumes of an attached garage: pressurize, or do not test.`}
      </li>
      <li>{say`Ask whether someone ill lives here before you start.`}</li>
      {ducts !== false && (
        <li>
          {say`Ducts: the air handler is switched off at its switch before registers are covered. Take the covers off and put the filter back afterwards.`}
        </li>
      )}
      <li>{say`Note each opening that you close, and open it again when you leave.`}</li>
      <li>{say`After tightening, combustion safety and ventilation are checked.`}</li>
      <li>{say`Never leave a house before everything is set back.`}</li>
      <li>{say`Local codes and licensed practice come first. This tool computes and records; it certifies nothing.`}</li>
    </ul>
  )
}

/**
 * The same in as few words as tell what to do, for a popup of which all has to be in sight before the first reading; the
 * whole sentences stand in the set-up.
 */
export function ShortCautions({ ducts }: { ducts: boolean }) {
  return (
    <ul class="cautions short">
      <li>
        <b>{say`Stop at once`}</b>{' '}
        {say`(fan off, doors open) at smoke, gas smell, soot, an alarm, a flame drawn out, anyone unwell.`}
      </li>
      <li>{say`Solid-fuel fires out, ashes covered.`}</li>
      <li>{say`Combustion appliances off or on pilot, unvented heaters cold; reset them when you leave.`}</li>
      <li>{say`People, pets and children away from fan and doors.`}</li>
      <li>
        {say`Asbestos (vermiculite), mould, lead dust, sewer gas, radon, garage fumes: pressurize, or do not test.`}
      </li>
      <li>{say`Ask whether someone ill lives here.`}</li>
      {ducts && <li>{say`Air handler off at its switch; afterwards covers off, filter back.`}</li>}
      <li>{say`Note what you close; open it again.`}</li>
      <li>{say`Afterwards: combustion safety and ventilation checked, everything set back.`}</li>
      <li>{say`Local codes and licensed practice come first; this tool certifies nothing.`}</li>
    </ul>
  )
}
