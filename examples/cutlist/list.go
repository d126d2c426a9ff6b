package main

import (
	"context"
	"fmt"
	"io"
	"os"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
)

func write(file, demo, list string, out io.Writer) error {
	in, err := open(file, demo)
	if err != nil {
		return err
	}
	defer in.Close()
	name := file
	if name == "" {
		name = "demo " + demo
	}
	d, err := dock.Read(name, in)
	if err != nil {
		return err
	}
	s, err := d.Shop(context.Background())
	if err != nil {
		return err
	}
	r := dock.Report{Shop: s}
	switch list {
	case "":
		return s.WriteText(out)
	case "cut":
		return r.WriteCutList(out)
	case "purchase":
		return r.WritePurchaseList(out)
	case "hardware":
		return r.WriteHardwareList(out)
	case "carry":
		return r.WriteCarryList(out)
	}
	return fmt.Errorf("cutlist: there is no list %q: want cut, purchase, hardware or carry", list)
}

func open(file, demo string) (io.ReadCloser, error) {
	if file != "" {
		return os.Open(file)
	}
	r, err := plan.Demo(demo)
	return io.NopCloser(r), err
}
