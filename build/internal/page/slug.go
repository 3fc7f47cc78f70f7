package page

// Slug turns words into an id: lower-case letters and digits with single hyphens ("Stored charge!" gives stored-charge).
// Apostrophes vanish, so that "maker's" gives makers. Letters outside ASCII are dropped.
func Slug(words string) string { return string(AppendSlug(nil, words, 0)) }

// AppendSlug appends the slug of the first limit words to dst; limit 0 means all of them.
func AppendSlug[T string | []byte](dst []byte, words T, limit int) []byte {
	start, count, gap := len(dst), 0, true
	for i := 0; i < len(words); i++ {
		c := words[i]
		switch {
		case 'A' <= c && c <= 'Z':
			c += 'a' - 'A'
		case 'a' <= c && c <= 'z' || '0' <= c && c <= '9':
		case c == '\'':
			continue
		case c == 0xE2 && i+2 < len(words) && words[i+1] == 0x80 && words[i+2] == 0x99: // typographic apostrophe
			i += 2
			continue
		default:
			gap = true
			continue
		}
		if gap {
			if limit > 0 && count == limit {
				break
			}
			if len(dst) > start {
				dst = append(dst, '-')
			}
			count++
			gap = false
		}
		dst = append(dst, c)
	}
	return dst
}
