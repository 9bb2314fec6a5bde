import type { TighteningFacts } from '../plan/facts.ts'
import { torqueUnitIn } from '../trade/convert/torque-unit-in.ts'
import { type Unit, unitsOf } from '../trade/convert/units.ts'
import { settingFor, type WrenchRangeFault, wrenchRangeFault } from '../trade/torque/wrench.ts'

/** What the wrench in use is set to for a pass. */
export interface WrenchView {
  /** Of the fastener. */
  newtonMetres: number
  /** On the scale of the wrench; null where the adapter leaves no lever. */
  settingNm: number | null
  /** In which the torque was typed. */
  unit: Unit
  /** In which the range of the wrench was typed; the other where none was. */
  scale: Unit
  fault: WrenchRangeFault | null
}

/** The setting for a pass, counted from 0; null where no wrench was named, or the pass asks for no torque. */
export function wrenchSetting({ passes, wrench }: TighteningFacts, pass: number): WrenchView | null {
  const asked = passes[pass]
  if (!wrench || !asked || !('newtonMetres' in asked)) return null
  const { newtonMetres } = asked
  const { leverMm, adapterMm = 0, angleDegrees = 0, leastNewtonMetres, mostNewtonMetres } = wrench
  const setting =
    leverMm === undefined
      ? newtonMetres
      : possible(settingFor(newtonMetres, { handleMm: leverMm, adapterMm, angleDegrees }))
  const range =
    mostNewtonMetres === undefined ? null : { leastNm: leastNewtonMetres ?? 0, mostNm: mostNewtonMetres }
  const unit = passUnit(asked.typed)
  return {
    newtonMetres,
    settingNm: setting,
    unit,
    scale: torqueUnitIn(wrench.typed) ?? unit,
    fault: setting === null || range === null ? null : wrenchRangeFault(setting, range),
  }
}

/** The settings for all passes by torque, each once. */
export function wrenchSettings(tightening: TighteningFacts): WrenchView[] {
  const views = tightening.passes.flatMap((_, pass) => wrenchSetting(tightening, pass) ?? [])
  return [...new Map(views.map((view) => [view.newtonMetres, view])).values()]
}

/** The unit in which a pass was typed; newton metres where it names none. */
export function passUnit(typed: string): Unit {
  const [newtonMetre] = unitsOf.torque
  return torqueUnitIn(typed) ?? newtonMetre ?? { name: 'N·m', scale: 1 }
}

function possible(setting: ReturnType<typeof settingFor>): number | null {
  return setting.isPossible ? setting.settingNm : null
}
