import type { TighteningFacts } from '../plan/facts.ts'
import { settingFor, type WrenchRangeFault, wrenchRangeFault } from '../trade/torque/wrench.ts'

/** What the wrench in use is set to for a pass. */
export interface WrenchView {
  /** Of the fastener. */
  newtonMetres: number
  /** On the scale of the wrench; null where the adapter leaves no lever. */
  settingNm: number | null
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
  return {
    newtonMetres,
    settingNm: setting,
    fault: setting === null || range === null ? null : wrenchRangeFault(setting, range),
  }
}

function possible(setting: ReturnType<typeof settingFor>): number | null {
  return setting.isPossible ? setting.settingNm : null
}
