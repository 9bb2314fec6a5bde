import { expect, test } from 'vitest'
import { recordOf } from './support/record-of.ts'
import { toldJob } from './support/told-job.ts'

const told = [
  'Kim: begin pump cover off',
  'Kim: off 3 of 4 M6x25 pump cover bolts, 1 snapped into new bag bolts',
  'Kim: off pump cover gasket, single-use into bench',
  'Kim: off 1.5 L coolant out',
  'Kim: mark: dot on top',
  'Kim: off rag > inlet port',
  'Kim: off 2 washers into bench',
  'undo',
  'Kim: took 20 min',
  'Kim: caution: hot',
  'Kim: end',
  'note: seal ordered',
  'Ola: new 2 pump cover bolts into bag 1',
  'Ola: new pump cover gasket',
  'Ola: compare p5: alike keep old',
  'Ola: scrap p2 because torn',
  'Ola: settle x1: stump drilled out',
  'Ola: count 1 = 3',
  'Ola: explain d1 missing because it fell into the pit',
  'Ola: accept lost p1 because nobody can reach it',
  'Ola: take out rag',
  'Ola: look 1',
  'Ola: override start 1 because the fourth bolt comes tomorrow',
  'Ola: take 1',
  'Ola: fit 3 p1',
  'Ola: fit pump cover gasket',
  'Ola: confirm m1',
  'Ola: new 1 pump cover bolt into bench',
  'Ola: fit 1 p1',
  'Ola: fill coolant 1.4 L',
  'Ola: tighten p1: 5 Nm, 10 Nm',
  'Ola: turn',
  'Ola: turn',
  'Ola: stop tea',
  'Kim: turn',
  'Kim: turn',
  'Kim: turn',
  'Kim: turn',
]

test('a small job, row by row', () => {
  const rows = recordOf(toldJob(...told), 100).map((row) => row.replace(/ id [0-9a-f-]{36}$/, ' id ID'))
  expect(rows).toEqual(wanted.split('\n'))
})

const wanted = `AS-BUILT RECORD
Values are as typed by the user; the service manual of the machine decides.

Job 7: blue twin
Machine: the blue twin, top end
State: build-up
People: Kim and Ola
Time noted: 20 min
Journal: to entry 39, 2030-01-01 08:38, id ID
Undone: 1 entry, left out here
Times: local, UTC. A number before a time is that of the entry in the journal.

     1  2030-01-01 08:00  job opened: blue twin, the blue twin, top end

CONDITION ON ARRIVAL
--------------------
     3  2030-01-01 08:02  [Kim] missing as found: 1 of 4, pump cover bolts M6x25, step 1, pump cover
     3  2030-01-01 08:02  [Kim] snapped as found: 1 × pump cover bolt M6x25, to scrap, step 1, pump
        cover
  fault x1, 1 × pump cover bolt M6x25 snapped, put right:
      18  2030-01-01 08:17  [Ola] x1 settled: stump drilled out

STEPS IN THE ORDER OF THE WAY BACK
----------------------------------
step 1, pump cover (under way)
  came off:
       2  2030-01-01 08:01  [Kim] step 1 begun: pump cover off, hides what is beneath
       3  2030-01-01 08:02  [Kim] came off: 2 × pump cover bolts M6x25, into bag 1, 1 snapped, to
          scrap (x1), 1 of 4 missing as found (new)
       4  2030-01-01 08:03  [Kim] came off: 1 × pump cover gasket, onto the bench
       5  2030-01-01 08:04  [Kim] drained: coolant 1.5 L
       6  2030-01-01 08:05  [Kim] mark m1: dot on top
       7  2030-01-01 08:06  [Kim] put in: 1 × rag at inlet port
      12  2030-01-01 08:11  [Kim] all off in step 1, pump cover
  notes:
      10  2030-01-01 08:09  [Kim] worked 20 min
      11  2030-01-01 08:10  [Kim] caution: hot
  on the way back:
      23  2030-01-01 08:22  [Ola] last look before step 1, pump cover
      24  2030-01-01 08:23  [Ola] overrode the start of step 1, pump cover (pieces short), because
          the fourth bolt comes tomorrow
      25  2030-01-01 08:24  [Ola] took up step 1, pump cover
  on the machine:
      26  2030-01-01 08:25  [Ola] 3 × pump cover bolts M6x25, from bag 1
      27  2030-01-01 08:26  [Ola] 1 × pump cover gasket, from the bench
      30  2030-01-01 08:29  [Ola] 1 × pump cover bolt M6x25, from the bench
  marks:
      28  2030-01-01 08:27  [Ola] mark m1 (dot on top): confirmed
  fluids:
      31  2030-01-01 08:30  [Ola] coolant (1.5 L drained): 1.4 L filled
  tightened:
    tightening t1 (pump cover: pump cover bolts)
        32  2030-01-01 08:31  [Ola] set, in the order 1, 2, 3, 4
      threads: not said whether dry or oiled
      pass 1 of 2: 5 Nm
          36  2030-01-01 08:35  [Kim] 1
          37  2030-01-01 08:36  [Kim] 2
          38  2030-01-01 08:37  [Kim] 3
          39  2030-01-01 08:38  [Kim] 4
      pass 2 of 2: 10 Nm
        not turned: 1, 2, 3, 4
        35  2030-01-01 08:34  [Ola] no longer counted: 1, 2 in pass 1

FOUND, CHECKED AND JUDGED
-------------------------
  Nothing was asked of any piece.

WANTED AND ORDERED
------------------
  Nothing was.

NEW PIECES
----------
    14  2030-01-01 08:13  [Ola] new: 2 × pump cover bolts M6x25 (p1) for a home that was short; all
        p1: 1 in scrap, 1 lost and 4 on the machine
    15  2030-01-01 08:14  [Ola] new: 1 × pump cover gasket (p5) in place of pump cover gasket (p2);
        the new: on the machine; the old: in scrap
      16  2030-01-01 08:15  [Ola] compared: pump cover gasket with the old one, p2: all alike; it is
          right
    29  2030-01-01 08:28  [Ola] new: 1 × pump cover bolt M6x25 (p1) for a home that was short; all
        p1: 1 in scrap, 1 lost and 4 on the machine

DECISIONS ON PIECES
-------------------
    21  2030-01-01 08:20  [Ola] accepted as lost: 1 × pump cover bolt M6x25, because nobody can
        reach it

OVERRIDES
---------
    24  2030-01-01 08:23  [Ola] overrode the start of step 1, pump cover (pieces short), because the
        fourth bolt comes tomorrow

SENT OUT, BACK, SCRAPPED AND MOVED
----------------------------------
    17  2030-01-01 08:16  [Ola] moved: 1 × pump cover gasket from the bench, to scrap, because torn

RECOUNTS
--------
    19  2030-01-01 08:18  [Ola] counted bag 1: 3 of 4 pump cover bolts M6x25, 1 short (d1)
      20  2030-01-01 08:19  [Ola] d1 explained: missing, 1 × pump cover bolt M6x25 from bag 1, to
          lost, because it fell into the pit

AIDS AND TOOLS
--------------
  1 × rag at inlet port (aid, step 1, pump cover): in the toolbox
       7  2030-01-01 08:06  [Kim] 1 from the toolbox onto the machine
      22  2030-01-01 08:21  [Ola] 1 from the machine into the toolbox

INTERRUPTIONS
-------------
    35  2030-01-01 08:34  [Ola] stopped in step 1, pump cover: tea

NOTES ON THE WHOLE JOB
----------------------
    13  2030-01-01 08:12  note: seal ordered

CONTAINERS AND LABELS
---------------------
     3  2030-01-01 08:02  [Kim] bag 1 (bolts): label code 1

PICTURES
--------
  There are none.

STILL OPEN
----------
  t1 (pump cover: pump cover bolts): not tightened through, step 1, pump cover.
  Step 1, pump cover: under way.

End of the as-built record of job 7, to entry 39.`
