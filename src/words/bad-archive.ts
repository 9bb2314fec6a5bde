import { type Told, told } from './told.ts'

/** Why a back-up is not taken, in one line, and what to do. */
export function badArchiveText({
  path,
  why,
  file,
}: {
  path: string
  why: string
  file: string | null
}): Told {
  if (why === 'newer') {
    return told(
      `the back-up ${path} was made by a newer putback`,
      'get the newest putback, and restore it with that',
      [NOTHING_TAKEN],
    )
  }
  return told(
    `${path} ${wrong(why, file)}`,
    'name another back-up, or copy this one anew from where it was made',
    [NOTHING_TAKEN],
  )
}

const NOTHING_TAKEN = 'nothing was taken from it'

function wrong(why: string, file: string | null): string {
  const inIt = `'${file}' in it`
  switch (why) {
    case 'not-an-archive':
      return 'is no back-up: it is no ZIP file, or one that was cut short'
    case 'foreign':
      return 'is no back-up of a job: it has no list of what is in it, or not one that putback writes'
    case 'name':
      return `is not taken: ${inIt} has a name that no back-up has`
    case 'twice':
      return `is not taken: ${inIt} is there twice, or under a name that some systems take for the same`
    case 'link':
      return `is not taken: ${inIt} is a link or a folder`
    case 'encrypted':
      return `is not taken: ${inIt} is encrypted`
    case 'packed':
      return `is not taken: ${inIt} is packed as no back-up packs it`
    case 'too-large':
      return file === null
        ? 'is not taken: it has more files than any job'
        : `is not taken: ${inIt} is larger than any job has it`
    case 'not-listed':
      return `is not taken: ${inIt} is not on its list`
    case 'missing':
      return `is not whole: '${file}' is on its list and not in it`
    case 'journal':
      return 'is not taken: its list tells of another job than the journal in it'
    default:
      return `is damaged: ${inIt} is not what was put in`
  }
}
