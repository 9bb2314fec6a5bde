import { describe, expect, test } from 'vitest'
import { said } from './said.ts'

describe('connections', () => {
  test.each([
    ['hose: tank > rail', { name: 'hose', ends: ['tank', 'rail'] }],
    ['fuel hose: tank > rail', { name: 'hose', label: 'fuel hose', ends: ['tank', 'rail'] }],
    ['fuel hose: tank -> rail', { name: 'hose', label: 'fuel hose', ends: ['tank', 'rail'] }],
    ['fuel hose: tank → rail', { name: 'hose', label: 'fuel hose', ends: ['tank', 'rail'] }],
    ['fuel hose: tank <-> rail', { name: 'hose', label: 'fuel hose', ends: ['tank', 'rail'] }],
    ['fuel hose: tank to rail', { name: 'hose', label: 'fuel hose', ends: ['tank', 'rail'] }],
    ['fuel hose: from tank to rail', { name: 'hose', label: 'fuel hose', ends: ['tank', 'rail'] }],
    ['fuel hose tank > rail', { name: 'hose', label: 'fuel hose', ends: ['tank', 'rail'] }],
    ['connector: coolant sensor', { name: 'connector', ends: ['coolant sensor'] }],
    ['coolant hose > radiator', { name: 'hose', label: 'coolant hose', ends: ['radiator'] }],
    [
      'spark plug lead: coil 1 > plug 1',
      { name: 'lead', label: 'spark plug lead', ends: ['coil 1', 'plug 1'] },
    ],
    [
      'clutch cable: lever > clutch arm',
      { name: 'cable', label: 'clutch cable', ends: ['lever', 'clutch arm'] },
    ],
    ['earth strap: frame > block', { name: 'strap', label: 'earth strap', ends: ['frame', 'block'] }],
    ['1 brake pipe: master > caliper', { name: 'pipe', label: 'brake pipe', ends: ['master', 'caliper'] }],
  ])('%s', (line, connection) => {
    expect(said(line)).toEqual([{ kind: 'connection', ...connection }])
  })
})

describe('aids and tools', () => {
  test.each([
    ['rag > inlet port 1', { name: 'rag', count: 1, where: 'inlet port 1' }],
    ['rags > inlet ports 1..2', { name: 'rags', count: 2, where: 'inlet ports', positions: ['1', '2'] }],
    ['2 rags > inlet ports 1,2', { name: 'rags', count: 2, where: 'inlet ports', positions: ['1', '2'] }],
    ['2 rags > inlet ports', { name: 'rags', count: 2, where: 'inlet ports' }],
    ['rags > inlet ports', { name: 'rags', count: 1, where: 'inlet ports', asks: 'count-assumed' }],
    ['rag in inlet port 1', { name: 'rag', count: 1, where: 'inlet port 1' }],
    ['locking pin in crank', { name: 'locking pin', count: 1, where: 'crank' }],
    ['plug > exhaust', { name: 'plug', count: 1, where: 'exhaust' }],
    ['locking pin > crank', { name: 'locking pin', count: 1, where: 'crank' }],
    ['chain retaining wire > chain', { name: 'chain retaining wire', count: 1, where: 'chain' }],
    ['chain-retaining wire > chain', { name: 'chain-retaining wire', count: 1, where: 'chain' }],
    ['hose clamp > coolant hose', { name: 'hose clamp', count: 1, where: 'coolant hose' }],
    ['strap > engine', { name: 'strap', count: 1, where: 'engine' }],
    ['aid: cardboard > radiator', { name: 'cardboard', count: 1, where: 'radiator' }],
  ])('%s', (line, aid) => {
    expect(said(line)).toEqual([{ kind: 'aid', ...aid }])
  })

  test.each([
    ['tool: torque wrench', [{ name: 'torque wrench', count: 1 }]],
    ['tools: 2 magnets', [{ name: 'magnets', count: 2 }]],
    [
      'tools: 2 magnets, torque wrench',
      [
        { name: 'magnets', count: 2 },
        { name: 'torque wrench', count: 1 },
      ],
    ],
    ['tool: 10 mm socket', [{ name: '10 mm socket', count: 1 }]],
    ['tools: pliers', [{ name: 'pliers', count: 1 }]],
    ['tools: magnets', [{ name: 'magnets', count: 1, asks: 'count-assumed' }]],
  ])('%s', (line, tools) => {
    expect(said(line)).toEqual(tools.map((tool) => ({ kind: 'tool', ...tool })))
  })
})

describe('fluids', () => {
  test.each([
    ['coolant out 2.1 L', { name: 'coolant', direction: 'out', litres: 2.1, typed: '2.1 L' }],
    ['coolant out: 2,1 l', { name: 'coolant', direction: 'out', litres: 2.1, typed: '2,1 l' }],
    ['oil out 3 US qt', { name: 'oil', direction: 'out', litres: 2.839058838, typed: '3 US qt' }],
    ['drained 2.1 L coolant', { name: 'coolant', direction: 'out', litres: 2.1, typed: '2.1 L' }],
    ['drained 2.1 L of coolant', { name: 'coolant', direction: 'out', litres: 2.1, typed: '2.1 L' }],
    ['drained: 2.1 L coolant', { name: 'coolant', direction: 'out', litres: 2.1, typed: '2.1 L' }],
    ['2.1 L coolant out', { name: 'coolant', direction: 'out', litres: 2.1, typed: '2.1 L' }],
    ['coolant in 2.0 L', { name: 'coolant', direction: 'in', litres: 2, typed: '2.0 L' }],
    ['filled 2 L coolant', { name: 'coolant', direction: 'in', litres: 2, typed: '2 L' }],
    ['brake fluid out 200 ml', { name: 'brake fluid', direction: 'out', litres: 0.2, typed: '200 ml' }],
    ['fork leg left out 480 ml', { name: 'fork leg left', direction: 'out', litres: 0.48, typed: '480 ml' }],
  ])('%s', (line, fluid) => {
    expect(said(line)).toEqual([{ kind: 'fluid', ...fluid }])
  })

  test('a bare quart is a US one for who works in US units', () => {
    expect(said('oil out 3 qt', 'us')).toMatchObject([{ litres: 2.839058838, typed: '3 qt' }])
  })

  test.each(['1 L jug in shed', 'oil filter out', 'coolant hose', 'oil drain plug', '2 bolts in bag'])(
    '%s is no fluid',
    (line) => {
      expect(said(line)[0]).not.toHaveProperty('litres')
    },
  )
})

describe('marks, notes and time', () => {
  test.each([
    [
      'mark: sprocket dot level with the head face',
      { kind: 'mark', text: 'sprocket dot level with the head face' },
    ],
    ['mark I3: arrow to chain', { kind: 'mark', text: 'arrow to chain', on: 'I3' }],
    ['Mark cam sprocket: dot up', { kind: 'mark', text: 'dot up', on: 'cam sprocket' }],
    ['note: gasket stuck, scraped', { kind: 'note', text: 'gasket stuck, scraped' }],
    ['note: tank > rail was loose', { kind: 'note', text: 'tank > rail was loose' }],
    ['caution: spring under load', { kind: 'caution', text: 'spring under load' }],
    ['used: 10 mm socket, magnet', { kind: 'used', text: '10 mm socket, magnet' }],
    ['took 25 min', { kind: 'minutes', minutes: 25 }],
    ['took 25m', { kind: 'minutes', minutes: 25 }],
    ['took 1 h', { kind: 'minutes', minutes: 60 }],
    ['took 1 h 20', { kind: 'minutes', minutes: 80 }],
    ['took 1h20', { kind: 'minutes', minutes: 80 }],
    ['took 1:20', { kind: 'minutes', minutes: 80 }],
    ['took 1,5 h', { kind: 'minutes', minutes: 90 }],
    ['took 2 hours 5 minutes', { kind: 'minutes', minutes: 125 }],
  ])('%s', (line, item) => {
    expect(said(line)).toEqual([item])
  })
})

test('several items with semicolons between them', () => {
  const items = said('  8 M6x25 bolts ; gasket, new;; fuel hose: tank > rail ;took 5 min; ')
  expect(items.map(({ kind }) => kind)).toEqual(['fastener', 'part', 'connection', 'minutes'])
})
