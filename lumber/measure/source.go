package measure

import "strings"

// A Status says how well a value is tied to its source. The zero value,
// Unstated, marks an omission: every source of the library states one.
type Status int

// The statuses, weakest first.
const (
	Unstated       Status = iota
	Memory                // recalled, not read
	CommonPractice        // a fact of the trade; no source
	OwnChoice             // chosen for this library, with the reason beside it
	Independent           // computed independently from a stated formula
	Quoted                // read as quoted by another text
	Read                  // read in the source's own text
	Exact                 // follows from definitions
)

var statusNames = [...]string{
	Unstated:       "status not stated",
	Memory:         "from memory",
	CommonPractice: "common practice, no source",
	OwnChoice:      "our choice",
	Independent:    "independent computation",
	Quoted:         "as quoted",
	Read:           "read",
	Exact:          "exact",
}

// String returns the words printed beside a source, such as "from memory".
func (s Status) String() string {
	if s < 0 || int(s) >= len(statusNames) {
		s = Unstated
	}
	return statusNames[s]
}

// A Source is where a formula, a value or a range comes from. The sources that the library
// gives are shared by all results that rest on them: none may be changed.
type Source struct {
	Title   string // title and publisher
	Edition string // year or edition, if it has one
	Locator string // equation, table, section or page
	Status  Status
}

// String returns title, edition and locator, and the status where the source
// was not read in its own text.
func (s *Source) String() string {
	if s == nil {
		return "no source"
	}
	parts := make([]string, 0, 3)
	for _, p := range []string{s.Title, s.Edition, s.Locator} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	text := strings.Join(parts, ", ")
	if s.Status != Read && s.Status != Exact && s.Status.String() != text {
		text += " (" + s.Status.String() + ")"
	}
	return text
}

// A Factor is one multiplier of a design value, with the reason it has that
// value.
type Factor struct {
	Symbol string  // as the source writes it, "CM"
	Name   string  // "wet service"
	Value  float64 // a ratio
	Why    string
	Source *Source
}

// String returns the factor as "CM 0.85 wet service: why".
func (f Factor) String() string {
	s := f.Symbol + " " + shortest(f.Value) + " " + f.Name
	if f.Why != "" {
		s += ": " + f.Why
	}
	return s
}
