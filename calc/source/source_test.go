package source

import (
	"reflect"
	"strconv"
	"strings"
	"testing"
)

// TestEveryFieldIsFilled walks the whole list: an empty field would print as a
// hole in the bibliography.
func TestEveryFieldIsFilled(t *testing.T) {
	for _, s := range All() {
		v := reflect.ValueOf(s)
		for i := range v.NumField() {
			text := v.Field(i).String()
			if text == "" || text != strings.TrimSpace(text) {
				t.Errorf("source %q: field %s is %q, want text without outer spaces", s.Key, v.Type().Field(i).Name, text)
			}
		}
	}
}

func TestKindsAndReadsAreKnown(t *testing.T) {
	kinds := []string{Regulation, Standard, Paper, Handbook, Textbook, Library, Manual, Article, CommonPractice}
	reads := []Read{InPrint, Secondary, Memory, Practice}
	for _, s := range All() {
		if !contains(kinds, s.Kind) {
			t.Errorf("source %q: kind %q, want one of %q", s.Key, s.Kind, kinds)
		}
		if !contains(reads, s.Read) {
			t.Errorf("source %q: read %q, want one of %q", s.Key, s.Read, reads)
		}
	}
}

func TestKeysAreUniqueAndPlain(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range All() {
		if seen[s.Key] {
			t.Errorf("source key %q occurs twice", s.Key)
		}
		seen[s.Key] = true
		for _, r := range s.Key {
			if !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '-') {
				t.Errorf("source key %q holds %q, want lower-case letters, digits and hyphens", s.Key, r)
			}
		}
	}
}

// TestListsAreSorted keeps each file easy to search by eye: practice-9
// stands before practice-10.
func TestListsAreSorted(t *testing.T) {
	for _, list := range lists() {
		for i := 1; i < len(list); i++ {
			if !before(list[i-1].Key, list[i].Key) {
				t.Errorf("source key %q stands before %q, want the other order", list[i-1].Key, list[i].Key)
			}
		}
	}
}

func TestLookup(t *testing.T) {
	for _, want := range All() {
		got, ok := Lookup(want.Key)
		if !ok || got != want {
			t.Errorf("Lookup(%q) = %+v, %v, want %+v", want.Key, got, ok, want)
		}
	}
	if got, ok := Lookup("no-such-key"); ok {
		t.Errorf("Lookup of an unknown key = %+v, true, want false", got)
	}
}

// TestSpecialKeys: the pages rely on these three.
func TestSpecialKeys(t *testing.T) {
	want := map[string]Read{"common-practice": Practice, "makers-manual": Practice, "from-memory": Memory}
	for key, read := range want {
		got, ok := Lookup(key)
		if !ok || got.Read != read {
			t.Errorf("special key %q: found %v, read %q, want %q", key, ok, got.Read, read)
		}
	}
	if len(special) != len(want) {
		t.Errorf("special holds %d keys, want %d", len(special), len(want))
	}
}

// TestMakersStayWithheld: a maker's document is described without its address.
func TestMakersStayWithheld(t *testing.T) {
	for _, s := range manuals {
		if !strings.HasPrefix(s.Address, "withheld") {
			t.Errorf("manual %q: address %q, want it withheld", s.Key, s.Address)
		}
	}
}

// before orders keys as a person does: a run of digits counts as one number.
func before(a, b string) bool {
	for a != "" && b != "" {
		runA, runB := firstRun(a), firstRun(b)
		if runA != runB {
			numA, errA := strconv.Atoi(runA)
			numB, errB := strconv.Atoi(runB)
			if errA == nil && errB == nil {
				return numA < numB
			}
			if (errA == nil) != (errB == nil) {
				return errA == nil // numbers stand before words
			}
			return runA < runB
		}
		a, b = a[len(runA):], b[len(runB):]
	}
	return a == "" && b != ""
}

// firstRun cuts the leading run of digits, or of anything but digits.
func firstRun(s string) string {
	isDigit := func(c byte) bool { return c >= '0' && c <= '9' }
	end := 1
	for end < len(s) && isDigit(s[end]) == isDigit(s[0]) {
		end++
	}
	return s[:end]
}

func contains[T comparable](list []T, x T) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}
