package main

import (
	"fmt"
	"strings"
	"time"

	"example.org/floewright/frame/sheet"
)

func init() {
	calls = append(calls, call{"frame/sheet", func() (string, error) {
		plan, err := sheet.Plan{Length: 6, Width: 2.4, Along: []float64{0, 0.4, 0.8}}.Draw()
		if err != nil {
			return "", err
		}
		page, err := sheet.Document{
			Title: "a dock", Date: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC),
			Cards: []sheet.Card{{Name: "layout", Title: "Layout", Blocks: []sheet.Block{plan}}},
		}.HTML()
		if err != nil {
			return "", err
		}
		if strings.Count(page, "<svg") != 1 || !strings.Contains(page, sheet.NotSealed) {
			return "", fmt.Errorf("the page has no picture, or does not say what it is not")
		}
		if _, err := (sheet.Plan{}).Draw(); err == nil {
			return "", fmt.Errorf("a plan of nothing is drawn")
		}
		if _, err := sheet.Draw(nil, nil); err == nil {
			return "", fmt.Errorf("no dock is drawn")
		}
		return "one page with one picture", nil
	}})
}
