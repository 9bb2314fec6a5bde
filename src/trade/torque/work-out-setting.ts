import {
  type Adapter,
  leastUsableNm,
  settingFor,
  type WrenchRange,
  type WrenchRangeFault,
  wrenchRangeFault,
} from './wrench.ts'

/** What a wrench is to be set for. */
export interface SettingAsked {
  newtonMetres: number
  adapter?: Adapter
  range?: WrenchRange
}

/** What the wrench is set to, and what speaks against it; or why there is no setting. */
export type WorkedSetting =
  | { isPossible: false; code: 'handle-length' | 'adapter-length' | 'no-lever' }
  | {
      isPossible: true
      settingNm: number
      /** Null where nothing speaks against it, and where no range was said. */
      fault: WrenchRangeFault | null
      /** The lowest setting of use; null where no range was said. */
      leastUsableNm: number | null
    }

/** Works out the setting of a wrench for a torque at the fastener, and holds it against the range of the wrench. */
export function workOutSetting({ newtonMetres, adapter, range }: SettingAsked): WorkedSetting {
  const setting =
    adapter === undefined
      ? { isPossible: true as const, settingNm: newtonMetres }
      : settingFor(newtonMetres, adapter)
  if (!setting.isPossible) return setting
  const { settingNm } = setting
  if (range === undefined) return { isPossible: true, settingNm, fault: null, leastUsableNm: null }
  const fault = wrenchRangeFault(settingNm, range)
  return { isPossible: true, settingNm, fault, leastUsableNm: leastUsableNm(range) }
}
