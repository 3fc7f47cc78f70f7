package calcview

import (
	"slices"
	"strings"

	"changeout/calc/property/refrigerant"
	"changeout/calc/property/refrigerant/facts"
	"changeout/calc/source"
	"changeout/calc/unit"
)

// Facts is what components/facts/facts.tmpl draws above the tables of a
// refrigerant, and below them the sources.
type Facts struct {
	Name    string
	Jumps   []Jump // to the tables of the page
	Key     []Fact // above the tables
	Rest    []Fact // below them
	Law     []Fact
	Checked string // month in which the laws were compared
	Sources []SourceItem
}

// Jump leads to a place on the page.
type Jump struct{ Text, Href string }

// Fact is a name and what is known.
type Fact struct {
	Label string
	Lines []FactLine
}

// FactLine is one statement, how certain it is, and the numbers of its sources.
type FactLine struct {
	Text, Mark string
	Cites      []FactCite
}

// FactCite is the number of a source and its place.
type FactCite struct {
	Number int
	Href   string
}

// sheetView gathers lines and numbers their sources in the order of the page.
type sheetView struct {
	prefix string
	keys   []string
}

// line writes one statement. The special keys of the bibliography are said in
// words, as on other pages.
func (v *sheetView) line(text string, read refrigerant.Read, keys ...string) FactLine {
	l := FactLine{Text: text}
	if read == refrigerant.Memory {
		l.Mark = "from memory: verify"
	}
	for _, k := range keys {
		switch k {
		case "", "from-memory":
			continue
		case "common-practice":
			l.Mark = "common practice"
			continue
		}
		if _, ok := source.Lookup(k); !ok {
			continue // a test fails on an unknown key
		}
		i := slices.Index(v.keys, k)
		if i < 0 {
			i = len(v.keys)
			v.keys = append(v.keys, k)
		}
		l.Cites = append(l.Cites, FactCite{Number: i + 1, Href: "#" + v.prefix + k})
	}
	return l
}

func (v *sheetView) say(s facts.Statement) FactLine {
	return v.line(sentenceCase(s.Text), s.Read, s.Keys...)
}

func sentenceCase(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// newFacts writes the sheet of a refrigerant.
func newFacts(l *look) Facts {
	r, s := l.r, l.sheet
	id := tableID(r.Name)
	v := &sheetView{prefix: "facts-" + id + "-source-"}
	f := Facts{Name: r.Name, Checked: facts.Checked, Jumps: []Jump{{"kPa, °C", "#table-" + id + "-metric"}, {"psi, °F", "#table-" + id + "-us"}, {"Limits, law", "#facts-limits"}}}
	// What a technician needs before opening a valve: short, so that the table is near.
	f.Key = []Fact{
		{"Safety class", []FactLine{v.say(s.Class)}},
		{"Charge as", []FactLine{{Text: sentenceCase(string(s.Phase))}}},
		{"Glide", []FactLine{{Text: l.glideText()}}},
		{"Usual oil", []FactLine{v.short(s.Oil, s.OilShort())}},
		{"GWP", []FactLine{v.warming(&s)}},
	}
	oil := []FactLine{v.say(s.Oil)}
	if s.Oil.Read != "" {
		oil = append(oil, FactLine{Text: "The compressor’s nameplate or manual decides, not the refrigerant."})
	}
	f.Rest = []Fact{
		{"What it is", v.composition(l)},
		{"Charging", []FactLine{v.say(s.Charge)}},
		{"Oil", oil},
		{"Concentration limit (RCL)", []FactLine{v.concentration(s.RCL)}},
		{"Lower flammability limit (LFL)", []FactLine{v.flammability(&s)}},
		{"Boils at 101.3 kPa", []FactLine{boiling(r)}},
		{"Critical point", []FactLine{{Text: critical(r), Mark: "computed"}}},
	}
	for _, law := range s.Laws {
		fact := Fact{Label: law.Where}
		for _, st := range law.Statements {
			fact.Lines = append(fact.Lines, v.say(st))
		}
		f.Law = append(f.Law, fact)
	}
	f.Sources = sourceItems(v.prefix, v.keys)
	return f
}

// short says a statement in fewer words, with the same marks.
func (v *sheetView) short(s facts.Statement, text string) FactLine {
	if text == "?" {
		return FactLine{Text: "Not known"}
	}
	return v.line(sentenceCase(text), s.Read, s.Keys...)
}

// warming writes the potentials by all lists in one line.
func (v *sheetView) warming(s *facts.Sheet) FactLine {
	if len(s.GWPs) == 0 {
		return FactLine{Text: "Not known"}
	}
	var parts, keys []string
	read := refrigerant.Secondary
	for _, g := range s.GWPs {
		parts = append(parts, strings.Replace(g.List, "EU 2024/573", "EU", 1)+"\u00a0"+gwpText(g.Value))
		if !slices.Contains(keys, g.Source) {
			keys = append(keys, g.Source)
		}
		if g.Read == refrigerant.Memory {
			read = g.Read
		}
	}
	l := v.line(strings.Join(parts, ", "), read, keys...)
	if l.Mark != "" {
		l.Mark = "partly from memory: verify"
	}
	return l
}

// gwpText writes a potential as lists print it: whole numbers, and "below 1".
func gwpText(v float64) string {
	switch {
	case v == 0:
		return "0"
	case v < 1:
		return "below 1"
	case v < 10:
		return unit.Short(v, 2)
	}
	return unit.Fixedf(v, 0)
}

// what says in a few words what the refrigerant is.
func (l *look) what() string {
	if l.sheet.Kind == facts.Pure {
		return sentenceCase(l.sheet.Chemical) + ", " + article(l.sheet.Family)
	}
	return sentenceCase(string(l.sheet.Kind)) + " of " + l.sheet.Family
}

// composition has one constituent on a line.
func (v *sheetView) composition(l *look) []FactLine {
	if l.sheet.Kind == facts.Pure {
		return []FactLine{{Text: l.what() + "."}}
	}
	lines := []FactLine{v.line(l.what()+", by mass:", refrigerant.Secondary, "coolp")}
	for _, c := range l.r.Components {
		lines = append(lines, FactLine{Text: c.Name + "\u2002" + unit.Short(100*c.MassFraction, 4) + "\u00a0%"})
	}
	return lines
}

// article puts "a" or "an" before a family: an HFC, a CFC, a hydrocarbon.
func article(family string) string {
	for _, p := range []string{"HFC", "HCFC", "HFO", "HCFO", "ether", "inorganic"} {
		if strings.HasPrefix(family, p) {
			return "an " + family
		}
	}
	return "a " + family
}

// flammability says none where the class says that no flame spreads.
func (v *sheetView) flammability(s *facts.Sheet) FactLine {
	if !s.LFL.Known() && strings.HasSuffix(s.Class.Text, "1") {
		return v.line("None is given for class "+s.Class.Text+".", s.Class.Read, s.Class.Keys...)
	}
	return v.concentration(s.LFL)
}

func (v *sheetView) concentration(f refrigerant.Fact) FactLine {
	if !f.Known() {
		return FactLine{Text: "Not known"}
	}
	env := unit.Env{}
	var texts []string
	for _, id := range []string{"g/m3", "lb/1000ft3"} {
		u := unit.Concentration.Unit(id)
		x := u.FromSI(f.Value, env)
		texts = append(texts, unit.Short(x, 3)+"\u00a0"+u.Label)
	}
	line := v.line(texts[0]+" ("+texts[1]+")", f.Read, f.Source)
	if f.Read == refrigerant.Memory {
		line.Mark = "from memory, edition not known: verify"
	}
	return line
}

func (l *look) glideText() string {
	if l.sheet.Kind == facts.Pure {
		return "None"
	}
	if l.glide <= glideMatters {
		return "Below 0.1\u00a0K at 25\u00a0°C"
	}
	_, high := l.r.Range()
	at := "25\u00a0°C"
	if high-1 < 298.15 {
		at = unit.Fixedf(high-1-273.15, 0) + "\u00a0°C"
	}
	return unit.Fixedf(l.glide, 1) + "\u00a0K (" + unit.Fixedf(l.glide*1.8, 1) + "\u00a0°F) at " + at
}

// boiling is the normal boiling point: the bubble point, and the dew point of
// a blend with glide.
func boiling(r *refrigerant.Refrigerant) FactLine {
	b, err := r.NormalBoiling()
	if err != nil {
		low, _, err := r.PressureRange()
		switch {
		case err != nil:
			return FactLine{Text: "Not known"}
		case low > 101325 && len(r.Components) == 1:
			return FactLine{Text: "It does not: solid passes straight to vapour.", Mark: "computed"}
		}
		return FactLine{Text: "Colder than the range computed here."}
	}
	text := temperatures(b.T)
	if d, err := r.DewAtP(101325); err == nil && d.T-b.T > glideMatters {
		text += ", dew point " + temperatures(d.T)
	}
	return FactLine{Text: text, Mark: "computed"}
}

func critical(r *refrigerant.Refrigerant) string {
	return temperatures(r.Critical.T) + ", " + unit.Fixedf(r.Critical.P/1e3, 0) + " kPa (" + unit.Fixedf(r.Critical.P/6894.757, 0) + " psi) absolute"
}

func temperatures(k float64) string {
	env := unit.Env{}
	return unit.Fixedf(unit.Temperature.Unit("C").FromSI(k, env), 1) + "\u00a0°C (" + unit.Fixedf(unit.Temperature.Unit("F").FromSI(k, env), 1) + "\u00a0°F)"
}
