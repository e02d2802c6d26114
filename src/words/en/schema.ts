/** What the published schema of the walk file says of its parts. */
export const schemaWords = {
  title: 'Sagline walk file, version 1',
  about:
    'Any number of walks with the machine, limit sheets, rule sets, prices, rates, work and holds that they use; also a single one of these. Lengths are millimetres unless a unit stands beside them; money counts minor units of the currency (ISO 4217).',
  key: 'Kind and id of the record; a reading is reading/<walk>/<place>/<item>/<n>, a place is left, right or whole, the component, and its number from the idler: left.bottom-roller.3.',
  stamp:
    'Which device made this version, and when in its own count. A record written by hand has no stamp, seen or by.',
  seen: 'For each device the highest count of this key that the author had. What is covered by a later version is left out when records are merged.',
  by: 'Who made this version.',
  value: 'What the record holds; unknown fields are kept. Without a value the record has been removed.',
  newer: 'A value of a newer version, which is kept as it is.',
  condition: 'A condition in the closed language of rules; each is answered with yes, no or not known.',
  seals: 'Sealed walks, each a JWS.',
} as const;
