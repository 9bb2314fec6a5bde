/** A standard that gives each thread size its drive. */
export interface DriveSeries {
  /** The standards by number, with what they are about. */
  name: string
  /** Its name in a question, where that is too long for a row. */
  short?: string
  kind: 'hex' | 'hex-key' | 'hexalobular' | 'external-hexalobular' | 'cross-recess'
  /** `JIS` written with the drive means this series and no other. */
  isJis?: true
  /** Set where the values were not read in a copy of the standard but are known by heart. */
  fromMemory?: true
  /** Thread size to across flats in mm, across flats in inches as a fraction, or the size number of the drive. */
  sizes: Readonly<Record<string, number | string>>
}

/**
 * Common series of heads, nuts and sockets. Copies and reprints of the standards were read, not the standards
 * themselves; `fromMemory` marks those for which not even a copy was read. A size absent here says nothing.
 */
export const driveSeries: readonly DriveSeries[] = [
  {
    name: 'ISO 4014/4017/4032 hexagon',
    short: 'ISO 4014 hexagon',
    kind: 'hex',
    sizes: {
      M3: 5.5,
      M4: 7,
      M5: 8,
      M6: 10,
      M8: 13,
      M10: 16,
      M12: 18,
      M14: 21,
      M16: 24,
      M18: 27,
      M20: 30,
      M22: 34,
      M24: 36,
    },
  },
  {
    name: 'DIN 931/933/934 hexagon (withdrawn)',
    short: 'DIN 931 hexagon, withdrawn',
    kind: 'hex',
    sizes: {
      M3: 5.5,
      M4: 7,
      M5: 8,
      M6: 10,
      M7: 11,
      M8: 13,
      M10: 17,
      M12: 19,
      M14: 22,
      M16: 24,
      M18: 27,
      M20: 30,
      M22: 32,
      M24: 36,
      M27: 41,
      M30: 46,
      M33: 50,
      M36: 55,
      M42: 65,
      M48: 75,
    },
  },
  {
    name: 'ISO 4162, EN 1662, JIS B 1189 small flange',
    short: 'ISO 4162 small flange',
    kind: 'hex',
    sizes: { M5: 7, M6: 8, M8: 10, M10: 13, M12: 15, M14: 18, M16: 21 },
  },
  {
    // M10 is left out: the copies of the standard contradict each other.
    name: 'EN 1665 flange',
    kind: 'hex',
    sizes: { M5: 8, M6: 10, M8: 13, M12: 18, M14: 21, M16: 24, M20: 30 },
  },
  {
    name: 'DIN 6921/6923 flange (withdrawn)',
    short: 'DIN 6921 flange, withdrawn',
    kind: 'hex',
    fromMemory: true,
    sizes: { M5: 8, M6: 10, M8: 13, M10: 15, M12: 18, M14: 21, M16: 24, M20: 30 },
  },
  {
    name: 'JIS B 1180 small hexagon',
    kind: 'hex',
    isJis: true,
    fromMemory: true,
    sizes: { M6: 10, M8: 12, M10: 14, M12: 17, M14: 19, M16: 22 },
  },
  {
    name: 'ASME B18.2.1 hexagon',
    kind: 'hex',
    sizes: {
      '1/4': '7/16',
      '5/16': '1/2',
      '3/8': '9/16',
      '7/16': '5/8',
      '1/2': '3/4',
      '9/16': '13/16',
      '5/8': '15/16',
      '3/4': '1-1/8',
      '7/8': '1-5/16',
      '1': '1-1/2',
    },
  },
  {
    // Nuts of 7/16 and 9/16 are a size larger than the heads.
    name: 'ASME B18.2.2 hexagon nut',
    kind: 'hex',
    fromMemory: true,
    sizes: {
      '1/4': '7/16',
      '5/16': '1/2',
      '3/8': '9/16',
      '7/16': '11/16',
      '1/2': '3/4',
      '9/16': '7/8',
      '5/8': '15/16',
      '3/4': '1-1/8',
      '7/8': '1-5/16',
      '1': '1-1/2',
    },
  },
  {
    name: 'ASME B18.2.1 heavy hexagon',
    kind: 'hex',
    sizes: { '1/2': '7/8', '5/8': '1-1/16', '3/4': '1-1/4', '7/8': '1-7/16', '1': '1-5/8' },
  },
  {
    name: 'ISO 4762, JIS B 1176 socket head cap screw',
    short: 'ISO 4762 cap screw',
    kind: 'hex-key',
    sizes: {
      M3: 2.5,
      M4: 3,
      M5: 4,
      M6: 5,
      M8: 6,
      M10: 8,
      M12: 10,
      M14: 12,
      M16: 14,
      M18: 14,
      M20: 17,
      M24: 19,
    },
  },
  {
    name: 'ISO 7380, ISO 10642 button and countersunk head',
    short: 'ISO 7380 button head',
    kind: 'hex-key',
    sizes: { M3: 2, M4: 2.5, M5: 3, M6: 4, M8: 5, M10: 6, M12: 8, M16: 10, M20: 10 },
  },
  {
    name: 'ISO 4026 set screw',
    kind: 'hex-key',
    sizes: { M3: 1.5, M4: 2, M5: 2.5, M6: 3, M8: 4, M10: 5, M12: 6, M14: 6, M16: 8, M20: 10, M24: 12 },
  },
  {
    name: 'DIN 7984 low head',
    kind: 'hex-key',
    fromMemory: true,
    sizes: { M3: 2, M4: 2.5, M5: 3, M6: 4, M8: 5, M10: 7, M12: 8, M14: 10, M16: 12 },
  },
  {
    name: 'ASME B18.3 socket head cap screw',
    short: 'ASME B18.3 cap screw',
    kind: 'hex-key',
    sizes: {
      '#10': '5/32',
      '1/4': '3/16',
      '5/16': '1/4',
      '3/8': '5/16',
      '7/16': '3/8',
      '1/2': '3/8',
      '5/8': '1/2',
      '3/4': '5/8',
    },
  },
  {
    name: 'ASME B18.3 button and countersunk head',
    short: 'ASME B18.3 button head',
    kind: 'hex-key',
    sizes: { '#10': '1/8', '1/4': '5/32', '5/16': '3/16', '3/8': '7/32', '1/2': '5/16', '5/8': '3/8' },
  },
  {
    name: 'ISO 14579, ISO 14583 hexalobular socket',
    short: 'ISO 14579',
    kind: 'hexalobular',
    sizes: {
      M2: 6,
      'M2.5': 8,
      M3: 10,
      'M3.5': 15,
      M4: 20,
      M5: 25,
      M6: 30,
      M8: 45,
      M10: 50,
      M12: 55,
      M14: 60,
      M16: 70,
      M18: 80,
      M20: 90,
    },
  },
  {
    name: 'hexalobular socket, one size smaller (common practice)',
    short: 'common practice',
    kind: 'hexalobular',
    fromMemory: true,
    sizes: { M5: 20, M6: 27, M8: 40, M10: 45, M12: 50, M14: 55 },
  },
  {
    name: 'DIN 34800 external hexalobular flange',
    short: 'DIN 34800',
    kind: 'external-hexalobular',
    fromMemory: true,
    sizes: { M5: 6, M6: 8, M7: 10, M8: 10, M10: 12, M12: 14, M14: 18, M16: 20, M20: 24 },
  },
  {
    name: 'external hexalobular, one size larger (common practice)',
    short: 'common practice',
    kind: 'external-hexalobular',
    fromMemory: true,
    sizes: { M5: 7, M6: 10, M8: 12, M10: 14, M12: 16, M14: 20, M16: 24 },
  },
  {
    name: 'ISO 7045 cross-recessed pan head',
    short: 'ISO 7045 pan head',
    kind: 'cross-recess',
    fromMemory: true,
    sizes: { 'M1.6': 0, M2: 0, 'M2.5': 1, M3: 1, 'M3.5': 2, M4: 2, M5: 2, M6: 3, M8: 4, M10: 4 },
  },
]
