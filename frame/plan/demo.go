package plan

import (
	"bytes"
	"embed"
	"strings"

	"example.org/floewright/lumber/measure"
)

//go:embed demo/*.json
var demos embed.FS

// Demos returns the names of the embedded plans. Both are invented and say so:
// a swim platform on drums in US units, a work float on blocks in metres.
func Demos() []string { return []string{"swim", "work"} }

// Demo returns the text of an embedded plan, to read or to start from. The error, of
// class [measure.ErrName], names the plans there are.
func Demo(name string) (*bytes.Reader, error) {
	data, err := demos.ReadFile("demo/" + name + ".json")
	if err != nil {
		return nil, &measure.Error{Field: "demo", Text: name, Class: measure.ErrName, Want: strings.Join(Demos(), " or ")}
	}
	return bytes.NewReader(data), nil
}
