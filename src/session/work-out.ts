import type { State } from '../journal/state.ts'
import type { ShimSum } from '../lines/shim-sum.ts'
import type {
  CoolantSum,
  FreezingPointSum,
  GlycolSum,
  MeasuresSum,
  OrderSum,
  PreloadSum,
  SettingSum,
  StretchSum,
  Sum,
  TimingSum,
} from '../lines/sum.ts'
import {
  type FreezingPoint,
  freezingPoint,
  type StrengthFor,
  strengthFor,
} from '../trade/coolant/freezing-point.ts'
import { type CoolantWorkedOut, workOutCoolant } from '../trade/coolant/work-out.ts'
import { boltStretch } from '../trade/measuring/bolt-stretch.ts'
import { type TimingWorkedOut, workOutTiming } from '../trade/timing/work-out.ts'
import { type WorkedPreload, workOutPreload } from '../trade/torque/work-out-preload.ts'
import { type WorkedSetting, workOutSetting } from '../trade/torque/work-out-setting.ts'
import { type MeasureView, measuresAbout } from './measure-views.ts'
import { type WorkedOrder, workOutOrder } from './work-out-order.ts'
import { type WorkedShims, workOutShims } from './work-out-shims.ts'

/** What a sum comes to, with what went into it: facts only, the words are made elsewhere. */
export type WorkedOut =
  | Extract<Sum, { sum: 'convert' }>
  | (SettingSum & { worked: WorkedSetting })
  | (PreloadSum & { worked: WorkedPreload })
  | (CoolantSum & { worked: CoolantWorkedOut })
  | (FreezingPointSum & { worked: FreezingPoint })
  | (GlycolSum & { worked: StrengthFor })
  | (TimingSum & { worked: TimingWorkedOut })
  | (MeasuresSum & { worked: MeasureView[] })
  | (StretchSum & { stretchMm: number })
  | (OrderSum & { worked: WorkedOrder })
  | (ShimSum & { worked: WorkedShims })

/** Works a sum out; the record is only looked at. */
export function workOut(state: State, sum: Sum): WorkedOut {
  switch (sum.sum) {
    case 'convert':
      return sum
    case 'setting':
      return { ...sum, worked: workOutSetting(inNewtonMetres(sum)) }
    case 'preload': {
      const { base: newtonMetres, typed } = sum.torque
      return { ...sum, worked: workOutPreload({ ...sum, newtonMetres, typed }) }
    }
    case 'coolant':
      return { ...sum, worked: workOutCoolant(sum.question) }
    case 'freezing-point':
      return { ...sum, worked: freezingPoint(sum.glycol, sum.percent) }
    case 'glycol-for':
      return { ...sum, worked: strengthFor(sum.glycol, sum.lowest.celsius) }
    case 'timing':
      return { ...sum, worked: workOutTiming(sum.question) }
    case 'measures':
      return { ...sum, worked: measuresAbout(state, sum.words) }
    case 'stretch':
      return { ...sum, stretchMm: boltStretch(sum.question) }
    case 'order':
      return { ...sum, worked: workOutOrder(state, sum) }
    case 'shims':
      return { ...sum, worked: workOutShims(state, sum) }
    default:
      return sum satisfies never
  }
}

function inNewtonMetres({ torque, adapter, range }: SettingSum): Parameters<typeof workOutSetting>[0] {
  return {
    newtonMetres: torque.base,
    ...(adapter && {
      adapter: {
        handleMm: adapter.handle.base,
        adapterMm: adapter.length.base,
        angleDegrees: adapter.angleDegrees,
      },
    }),
    ...(range && { range: { leastNm: range.least.base, mostNm: range.most.base } }),
  }
}
