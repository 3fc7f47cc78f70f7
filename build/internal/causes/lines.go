package causes

import (
	"strconv"
	"strings"
)

// Engine writes the model as calc/cause reads it.
func (m *Model) Engine() string {
	var w lines
	for _, c := range m.Causes {
		w.line("cause", c.ID, c.Name, short(c.Prior), pick(c.Again, "recurs", "passes"))
	}
	for _, k := range m.Mechanisms {
		w.line("mechanism", k.ID, k.Name)
	}
	for _, c := range m.Causes {
		for _, l := range c.Leads {
			w.line("leads", c.ID, l.To, short(l.P))
		}
	}
	for _, c := range m.Checks {
		w.line("finding", c.ID, c.Statement, pick(c.Mechanisms, "mechanisms", "causes"), strings.Join(c.Facts, ","), short(c.Leak), short(c.Minutes), strconv.Itoa(c.Risk), pick(c.Before, "before", "-"))
		for _, s := range c.Weights {
			w.line("sign", c.ID, s.To, short(s.P))
		}
	}
	return w.String()
}

// Data is the file that the page of the assessment loads: the engine's lines, an empty line, and what only the page
// needs. Fields are parted by tabs; addresses count from the site's root.
//
//	removes  cause      words  address or empty
//	means    mechanism  words
//	place    id         title
//	ask      finding    place  question  words of the link  address
//	limit    finding    worksheet  output  below|above  SI value  both|yes  verdicts with which it says nothing, with commas
//	verdict  finding    worksheet  verdicts for yes  verdicts for no
//
// A limit is passed strictly: a value equal to it is not below and not above. “yes” means that a value on the other side
// leaves the question open. A verdict that is in neither list leaves it open too.
func (m *Model) Data() []byte {
	var w lines
	for _, c := range m.Causes {
		w.line("removes", c.ID, c.Removes, c.Page)
	}
	for _, k := range m.Mechanisms {
		w.line("means", k.ID, k.Means)
	}
	for _, p := range m.Places {
		w.line("place", p.ID, p.Title)
	}
	for _, c := range m.Checks {
		w.line("ask", c.ID, m.Places[c.Place].ID, c.Question, c.How, c.Page)
	}
	for _, c := range m.Checks {
		switch a := c.From; {
		case a == nil:
		case a.Output != nil:
			w.line("limit", c.ID, a.Worksheet.ID, a.Output.ID, pick(a.Above, "above", "below"), short(a.Limit), pick(a.YesOnly, "yes", "both"), strings.Join(a.Not, ","))
		default:
			w.line("verdict", c.ID, a.Worksheet.ID, strings.Join(a.Yes, ","), strings.Join(a.No, ","))
		}
	}
	return []byte(m.Engine() + "\n" + w.String())
}

type lines struct{ strings.Builder }

func (w *lines) line(fields ...string) {
	w.WriteString(strings.Join(fields, "\t"))
	w.WriteByte('\n')
}

// short writes a number with as few digits as the page gave; six are more than anybody writes.
func short(v float64) string {
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	return strconv.FormatFloat(v, 'g', -1, 64)
}

func pick(b bool, yes, no string) string {
	if b {
		return yes
	}
	return no
}
