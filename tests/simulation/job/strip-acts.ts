import type { Lot, Machine, MatchedSet, StripStep, Thing } from '../machines/machine.ts'
import type { Act, Doing } from './act.ts'

/** Everything comes off, step by step. */
export function stripActs(machine: Machine): Act[] {
  return machine.steps.flatMap((step, at) => stepOff(step, at + 1))
}

function stepOff(step: StripStep, no: number): Act[] {
  const after = step.after.length === 0 ? 'free' : `after ${step.after.map((at) => at + 1).join(',')}`
  const hides = step.hides ? 'hides' : 'does not hide'
  return [
    act('begin', no, () => `begin ${step.title}, ${after}, ${hides}`),
    ...step.things.flatMap((thing) => thingOff(thing, no)),
    act('end', no, () => 'end'),
  ]
}

function thingOff(thing: Thing, no: number): Act[] {
  switch (thing.kind) {
    case 'lot':
      return lotOff(thing, no)
    case 'part':
      return [
        act('off', no, () => `off ${thing.name}${thing.isSingleUse ? ', single-use' : ''} into bench`, thing),
      ]
    case 'set':
      return setOff(thing, no)
    case 'hose':
      return [act('off', no, () => `off ${thing.name}: ${thing.ends[0]} > ${thing.ends[1]}`, thing)]
    case 'aid':
      return [
        act(
          'off',
          no,
          () => (thing.where ? `off ${thing.name} > ${thing.where}` : `tool: ${thing.name}`),
          thing,
        ),
      ]
    case 'fluid':
      return [act('off', no, () => `off ${thing.name} out ${thing.litres}`, thing)]
    case 'mark':
      return [act('mark', no, () => `mark: ${thing.text}`, thing)]
    case 'put-on':
      return []
    default:
      return thing satisfies never
  }
}

function lotOff(lot: Lot, no: number): Act[] {
  const what = `${lot.size} ${lot.drive} ${lot.count === 1 ? lot.one : lot.name}`
  const at = lot.at === null ? '' : ` @${lot.at.join(',')}`
  const off = act(
    'off',
    no,
    ({ saidOff }) =>
      `off ${saidOff.get(lot) ?? lot.count} ${what}${at}${lot.isSingleUse ? ', single-use' : ''} into new bag`,
    lot,
  )
  const { passes } = lot
  return passes?.layout ? [off, act('draw', no, () => `layout ${lot.name}: ${passes.layout}`, lot)] : [off]
}

function setOff(set: MatchedSet, no: number): Act[] {
  const range = `${set.positions[0]}..${set.positions.at(-1)}`
  return [
    act('open', no, () => `tray ${set.positions.length} slots ${set.name}`, set),
    act('off', no, ({ containers }) => `off ${set.name} ${range} into tray ${containers.get(set)}`, set),
    ...set.marked.map((at) => act('mark', no, () => `mark ${set.one} ${at}: arrow to the front`, set, at)),
  ]
}

export function act(doing: Doing, step: number, say: Act['say'], thing?: Thing, at?: string): Act {
  return { doing, step, thing, at, say }
}
