import { labelCode } from '../../../src/label/code.ts'
import type { BlankLabel, ContainerLabel, FlagLabel, MachineTag } from '../../../src/label/label-content.ts'

const job = 'job 17 the blue twin'
const date = '2025-11-25'

export const bag: ContainerLabel = {
  kind: 'container',
  name: 'bag 3',
  code: labelCode(17, 3),
  heading: 'BAG 3',
  part: '1 of 2',
  what: ['8 × valve cover bolts M6x25 hex 8'],
  where: ['valve cover, step 1'],
  status: 'FIT AGAIN',
  warnings: [],
  job,
  date,
}

export const blank: BlankLabel = { kind: 'blank', name: 'label 44', code: labelCode(17, 44), job }

export const flag: FlagLabel = {
  kind: 'flag',
  name: 'flag A of coolant hose',
  code: labelCode(17, 51),
  end: 'A',
  what: 'coolant hose',
  own: 'radiator top',
  others: ['thermostat housing'],
  job,
}

export const tag: MachineTag = {
  kind: 'machine',
  name: 'machine tag',
  code: labelCode(17, 9000),
  state: 'NOT READY TO START',
  reasons: ['14 pieces off', 'coolant drained', '2 rags in it'],
  machine: 'the blue twin',
  job,
  date,
}
