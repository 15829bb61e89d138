package book

import (
	"context"
	"fmt"

	"pressworth/catalog"
	"pressworth/ui/parts"
)

// workedAtOnce is how many decided quotes are opened before the window tells how far it is: about half a second's worth.
const workedAtOnce = 200

// workOut has the figures of decided quotes worked out, a part at a time, with a way to stop it, and then goes on. It
// ends where nobody waits for it any more.
func (p *Place) workOut(waits func() bool, then func()) {
	stopped := false
	var on func(told bool)
	on = func(told bool) {
		parts.Background(func() func() {
			left, err := p.Figures.WorkOut(context.Background(), workedAtOnce)
			return func() {
				switch {
				case !waits():
					return
				case err != nil:
					p.failed("The figures of decided quotes could not be worked out", err)
				case stopped:
					p.said("Stopped. What was worked out is kept; the rest is worked out when this page is opened again.")
				case left > 0:
					p.busy("Opening what was decided: "+countOf(left, "quote")+" to go. This is done once.", func() { stopped = true })
					on(true)
				default:
					if told {
						p.hush()
					}
					then()
				}
			}
		})
	}
	on(false)
}

// busy says what is being done, with a way to stop it.
func (p *Place) busy(words string, stop func()) {
	p.notice.SetText(words)
	p.notice.Offer("Stop", stop)
	p.relay()
}

// mostLeftOut is how many quotes are named that reports do not count.
const mostLeftOut = 3

// leftOut says which quotes the figures do not count.
func (p *Place) leftOut(all []catalog.Figured) {
	why := catalog.LeftOut(all)
	if len(why) == 0 {
		return
	}
	text := ""
	for _, w := range why[:min(len(why), mostLeftOut)] {
		text += w + ". "
	}
	if more := len(why) - mostLeftOut; more > 0 {
		text += fmt.Sprintf("So it is with %d more. ", more)
	}
	p.fault.SetText(text + "It is left out here.")
	p.relay()
}
