/** Texts that are made to be taken for something else: markup, commands to a terminal, paths, formulas, keys of an object. */
export const hostileStrings: Readonly<Record<string, string>> = {
  'a script': '<script>alert(1)</script>',
  'an attribute': '" onload="alert(1)',
  'a closing comment': "'--><svg/onload=alert(1)>",
  'a closing section': ']]></style><b>',
  'an entity': '&#27;[2J&lt;b',
  'a way up': '../../../up',
  'a way from the root': '/tmp/x\\..\\y:z',
  'a formula': '=1+1|x!A1',
  'a closing string': "') x); #1=Q('(\\",
  'a template': '{{7*7}}%s%n$(id)`id`',
  'a key of every object': '__proto__',
  'a cleared screen': 'a\u001b[2J\u001b]0;x\u0007',
  'a cleared screen in one sign': 'a\u009b2J',
  'a zero': 'a\u0000b',
  'a line end': 'a\n0\nEOF\n',
  'turned writing': 'a\u202eb\u2066c',
  'a line end of its own kind': 'a\u2028b',
  'half a letter': 'a\ud800',
};

/** Marks that must not stand in a page or a picture as they were typed. */
export const liveMarkup = /<script>alert|" onload=|<svg\/onload|\]\]><\/style><b>/;
