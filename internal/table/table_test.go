package table_test

import (
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/internal/table"
)

func TestRead(t *testing.T) {
	files := fstest.MapFS{
		"data/good.csv":   {Data: []byte("# a remark\na,b\n1,\"x, y\"\n# another\n2,\n")},
		"data/ragged.csv": {Data: []byte("a,b\n1\n")},
		"data/empty.csv":  {Data: []byte("# nothing\n")},
	}
	got, err := table.Read[map[string]string](files, "good")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]map[string]string{{"a": "1", "b": "x, y"}, {"a": "2", "b": ""}}, got); diff != "" {
		t.Error(diff)
	}
	for _, name := range []string{"ragged", "empty", "none"} {
		if _, err := table.Read[map[string]string](files, name); err == nil {
			t.Errorf("%s gives no error", name)
		}
	}
}
