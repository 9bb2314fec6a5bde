import { bearerOf } from '../../session/scan.ts'
import { bearerName } from '../../words/bearers.ts'
import { QUIT, SCREENS } from '../keys.ts'
import { printChoice } from '../model/print-choices.ts'
import { isUnderWay, type Scene } from '../model/scene.ts'
import type { Screen } from '../navigation.ts'
import { act, go, type Meaning, noNumber } from './meaning.ts'
import { shownLabel } from './read-label.ts'

/** `.1` to `.6`, and `.` for where one is. Some number pads have a comma there, and some no `*`: `.0` is that. */
export function toScreen(text: string): Meaning | undefined {
  const digit = /^[.,](\d?)$/.exec(text)?.[1]
  if (digit === undefined) return undefined
  if (digit === '0') return LARGE
  const found = SCREENS.find((each) => each.digit === digit)
  return found
    ? go(`${found.name}: ${found.says}`, found.screen)
    : noNumber(`There is no screen .${digit}.`, 'The screens are . and .1 to .6')
}

/** A word that the screens know beside the language of the record. */
export function screenWord(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const named = /^new job(?: (.+))?$/i.exec(text)
  if (named) return go('a new job', { at: 'new-job', name: named[1]?.replaceAll('"', '') ?? null })
  const sound = /^(?:sound|bell|beep)(?: (on|off))?$/i.exec(text)
  if (sound)
    return act(
      { do: 'sound', on: sound[1] === undefined ? undefined : /on/i.test(sound[1]) },
      'the bell, on or off',
    )
  if (/^large$/i.test(text)) return LARGE
  if (/^told$/i.test(text)) return go('all that came of the last print or import', { at: 'told' })
  if (/^labels?$/i.test(text)) return itsLabel(text, scene, screen)
  if (/^jobs$/i.test(text)) return go('the jobs of this home', { at: 'jobs' })
  if (QUIT.test(text))
    return isUnderWay(scene.session.state)
      ? go('stop work and leave', { at: 'leave' })
      : act({ do: 'leave', note: null }, 'leave')
  return undefined
}

const LARGE = act({ do: 'large' }, 'large letters, and small again')

/** `label` and `labels` alone mean the one on the screen, else the one in hand. */
function itsLabel(text: string, { session, hand }: Scene, screen: Screen): Meaning | undefined {
  const { state } = session
  const shown = shownLabel(session, screen)
  const no = shown ?? hand ?? state.hand
  const bearer = no === null ? null : bearerOf(state, no)
  if (no === null || bearer === null) return undefined
  if (/^label$/i.test(text))
    return go(`what to write on ${bearerName(state, bearer)}`, { at: 'qr', container: no, invert: false })
  const choice = printChoice(state, no)
  return choice ? act(choice.act, `${choice.says}: ${bearerName(state, bearer)}`) : undefined
}
