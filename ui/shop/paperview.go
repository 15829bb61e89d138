package shop

import (
	"bytes"
	"fmt"
	"image"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"pressworth/quote"
	"pressworth/quote/calendar"
	"pressworth/ui/parts"
)

// letterheadView shows the letterhead as it stands on paper, with the number of the next quote.
type letterheadView struct {
	object  *fyne.Container
	name    *parts.Text
	address *parts.Paragraph
	number  *parts.Text
	logo    *canvas.Image
	shown   string // the logo that was read last, so that it is not read on every key
}

func newLetterheadView() *letterheadView {
	v := &letterheadView{
		name: parts.NewText("", parts.StrongStyle.Shortened()), address: parts.NewParagraph("", parts.CaptionStyle), number: parts.NewText("", parts.CaptionStyle.Right()),
		logo: canvas.NewImageFromImage(nil),
	}
	v.logo.FillMode = canvas.ImageFillContain
	v.logo.Hide()
	v.object = parts.Column(3, container.New(logoBox{}, v.logo), parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, v.name, v.number), v.address)
	return v
}

func (v *letterheadView) show(r record, today time.Time) {
	l := r.Letterhead
	v.name.SetText(l.Name)
	var all []string
	for _, text := range append(strings.Split(l.Address, "\n"), l.Phone, l.Email, l.Website) {
		if text != "" {
			all = append(all, text)
		}
	}
	v.address.SetText(strings.Join(all, " · "))
	v.number.SetText("")
	if r.Numbering.Next > 0 {
		v.number.SetText("numbers like " + r.Numbering.Write(today.Year(), r.Numbering.Next))
	}
	v.picture(r.Logo.Data)
	v.object.Refresh()
}

func (v *letterheadView) picture(data []byte) {
	if v.shown == string(data) {
		return
	}
	v.shown, v.logo.Image = string(data), nil
	if picture, _, err := image.Decode(bytes.NewReader(data)); err == nil {
		v.logo.Image = picture
	}
	if v.logo.Image == nil {
		v.logo.Hide()
	} else {
		v.logo.Show()
	}
	v.logo.Refresh()
}

// month is over how many days the calendar is summed up.
const month = 28

// inPractice says what the calendar comes to, beside what the sample job takes of it.
func inPractice(r record, job quote.Result, today time.Time) string {
	c, err := r.Calendar.Open()
	if err != nil {
		return ""
	}
	open, hours := 0, 0.0
	first := calendar.Of(today)
	for d := first; d < first+month; d++ {
		if c.Open(d) {
			open++
			h, _ := r.Calendar.Hours[d.Weekday()].Rat().Float64()
			hours += h
		}
	}
	if hours == 0 {
		return ""
	}
	return fmt.Sprintf("In the next four weeks the shop is open on %d days and presses for %.0f hours; the sample job takes %s hours.", open, hours, job.Hours)
}
