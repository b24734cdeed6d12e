// Letters that Unicode does not take apart into a base letter and a mark, though people type them without.
const PLAIN_LETTERS: Readonly<Record<string, string>> = {
  ł: 'l',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  æ: 'ae',
  œ: 'oe',
  ß: 'ss',
  ı: 'i',
};

/** Text without diacritics: 'Á. Löve' becomes 'A. Love'. Case is kept. */
export function withoutDiacritics(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[łøđðþæœßıŁØĐÐÞÆŒ]/g, (letter) => {
      const plain = PLAIN_LETTERS[letter.toLowerCase()] ?? letter;
      return letter === letter.toLowerCase() ? plain : plain.charAt(0).toUpperCase() + plain.slice(1);
    });
}

/**
 * The form under which names are looked up: lower case, without diacritics, quotes, dots and hybrid signs (× or a lone x),
 * with every other sign turned into one space. 'Bicknell’s sedge' and 'bicknells sedge' have one key, and so have
 * 'Liatris ×gladewitchensis' and 'Liatris x gladewitchensis'. Empty when the text holds no letter or digit.
 */
export function nameKey(text: string): string {
  // Twice, since a capital may only in lower case show a letter to take apart (ẞ), and the other way round (İ).
  return withoutDiacritics(withoutDiacritics(text).toLowerCase())
    .toLowerCase()
    .replace(/['’‘‛ʼ´`"“”„«».]/g, '')
    .replace(/×/g, ' ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .replace(/(^| )x(?= )/g, '')
    .trim()
    .replace(/ +/g, ' ');
}
