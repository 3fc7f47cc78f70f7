package typeset

import (
	"strings"
	"testing"
)

// In the cases ~ is a no-break space and {} stand around a name that is kept whole.
func TestPage(t *testing.T) {
	for _, c := range []struct{ name, page, want string }{
		{"number and unit", "<p>Pull to 500 micron, then 20 °C.</p>", "<p>Pull to 500~micron, then 20~°C.</p>"},
		{"thousands", "at 10 000 micron or 101 325 Pa", "at 10~000~micron or 101~325~Pa"},
		{"no thousands", "in 2024 2025 and step 3 1234", "in 2024 2025 and step 3 1234"},
		{"a unit of two words", "50 V DC and 40 bar (gauge), 3 kPa gauge", "50~V~DC and 40~bar~(gauge), 3~kPa~gauge"},
		{"a fraction", "¼ in or 1 ½ in", "¼~in or 1~½~in"},
		{"a range", "Do steps 25 to 40. Go to step 3, 20 to 30 K; 5 to go, 5 to", "Do steps 25~to~40. Go to step 3, 20~to~30~K; 5 to go, 5 to"},
		{"words", "Take 3 hoses in hand", "Take 3 hoses in hand"},
		{"a name", "Is R-410A or (R-32)? FR-4 is a board.", "Is {R-410A} or ({R-32})? FR-4 is a board."},
		{"a name with marks around", "<b>R-407C</b>, R-22.", "<b>{R-407C}</b>, {R-22}."},
		{"attributes", `<p title="20 bar of R-32">x</p>`, `<p title="20 bar of R-32">x</p>`},
		{"not prose", "<title>R-32 at 20 bar</title><option value=a>R-32 at 20 bar</option><svg><text>R-32 at 20 bar</text></svg><code>20 bar</code> 20 bar", "<title>R-32 at 20 bar</title><option value=a>R-32 at 20 bar</option><svg><text>R-32 at 20 bar</text></svg><code>20 bar</code> 20~bar"},
		{"an end", "at 5", "at 5"},
		{"cut tag", "5 bar <p", "5~bar <p"},
	} {
		want := strings.NewReplacer("~", noBreak, "{", nameOpen, "}", nameClose).Replace(c.want)
		if got := string(Page([]byte(c.page))); got != want {
			t.Errorf("%s\n got %q\nwant %q", c.name, got, want)
		}
	}
}

func BenchmarkPage(b *testing.B) {
	page := []byte(strings.Repeat("<p>When the pressure stands at 500 micron for 30 minutes, the system with R-410A is dry and it holds.</p>\n", 100))
	b.SetBytes(int64(len(page)))
	for b.Loop() {
		Page(page)
	}
}
