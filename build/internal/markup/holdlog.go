package markup

import "github.com/alecthomas/chroma/v2"

// holdlog is the lexer for logs of a vacuum hold, as the worksheet vacuum-hold reads them: a row of column titles
// (minutes,micron and perhaps ambient_C), then rows of numbers parted by a comma, semicolon or tab; # opens a remark.
var holdlog = chroma.MustNewLexer(
	&chroma.Config{Name: "Vacuum hold log", Aliases: []string{"holdlog"}, EnsureNL: true},
	func() chroma.Rules {
		return chroma.Rules{
			"root": {
				{Pattern: `#.*\n`, Type: chroma.CommentSingle},
				{Pattern: `[A-Za-zµ°][\w µ°%/()-]*`, Type: chroma.NameAttribute},
				{Pattern: `[+-]?\d+(\.\d+)?([eE][+-]?\d+)?`, Type: chroma.LiteralNumber},
				{Pattern: `[,;\t]`, Type: chroma.Punctuation},
				{Pattern: `\s+`, Type: chroma.TextWhitespace},
				{Pattern: `.`, Type: chroma.Error},
			},
		}
	},
)
