package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/sheet"
)

// today is the date on the pages.
var today = time.Now

// write puts pages, pictures, lists and the report into a folder, all or none.
func write(dir string, d *dock.Dock, r *dock.Report, date time.Time) error {
	pages, err := sheet.Of(d, r, date)
	if err != nil {
		return err
	}
	files, err := pages.Files()
	if err != nil {
		return err
	}
	for _, f := range []struct {
		name  string
		write func(io.Writer) error
	}{
		{"report.json", r.WriteJSON},
		{"cut.csv", r.WriteCutList},
		{"purchase.csv", r.WritePurchaseList},
		{"hardware.csv", r.WriteHardwareList},
		{"carry.csv", r.WriteCarryList},
	} {
		var b bytes.Buffer
		if err := f.write(&b); err != nil {
			return err
		}
		files = append(files, sheet.File{Name: f.name, Data: b.Bytes()})
	}
	return sheet.WriteFiles(dir, files)
}

// progress returns what tells a person at a terminal what is being done; "" wipes it
// out again. It is silent elsewhere.
func progress(errs io.Writer) func(string) {
	f, ok := errs.(*os.File)
	if !ok {
		return func(string) {}
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return func(string) {}
	}
	return func(what string) { fmt.Fprintf(f, "\r\x1b[K%s", what) }
}
