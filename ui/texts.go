package ui

// helpTexts is a page of help a place.
var helpTexts = [placeCount][]string{
	counterPlace: {
		"Price a job while the customer stands there. Everything typed at the left is priced at once at the right; where something is missing the last good figures stay, greyed, and the words beside the field say what would do.",
		"Garments: type a style, a colour or any word and press Enter. Sizes: one cell a size; arrows and Tab move, Enter goes to the next garment. A whole run can be typed into one cell as 6/11/9/0/3 or S12 M24 L24, or pasted from a spreadsheet.",
		"Artwork: take a placement from the list or type a name, then inches and inks. The method is chosen by what the whole job costs; pick another and the panel says what that costs more.",
		"Names and numbers: paste a team's list into the first cell or take it from a file; the columns are guessed and said. The sizes follow the list, what must be mended stands below its row, and last season's list tells who is new and which numbers are free.",
		"A price typed into the price table at the right replaces the computed one: margin, what is left for an hour, and the floor it breaks follow at once.",
		"Ctrl+T turns the window to the customer: prices and the drawing, no costs.",
	},
	bookPlace: {
		"Every quote with its state, total, margin and next step; above them what needs doing today. Type to find by any word, number, date or amount; Enter opens a quote's page, Esc goes back.",
		"On its page the filled button is the next step: send, accept, each step from approved artwork to collected goods, finish. Money, papers and dates stand at the right. What was done by mistake is taken back with Ctrl+Z.",
		"Sending a quote freezes a revision: its prices stay as they were, whatever the lists say later. Editing a sent quote makes the next revision; any two can be compared line by line, and an open one repriced at today's prices with the reasons for every cent.",
		"The artwork of an accepted quote can be kept on file from its page; a repeat then pays for no set-up, no digitizing and no redrawing. Pieces that were spoiled get a ticket of their own, piece by piece, with the name that belongs on each.",
		"To buy gathers what all accepted quotes need, by supplier. Customers keeps level, terms and exemption, and makes one of those kept twice. The shelf is what was left over.",
	},
	blanksPlace: {
		"The garments the shop can buy. Type any words or their beginnings: style, name, colour, mill or category. The usual ones come first.",
		"Import prices reads a supplier's CSV, TSV or XLSX in three steps and shows everything it would change, and which open quotes that touches, before anything is taken. Change prices raises or lowers everything in the list by a percentage or an amount. Both can be taken back.",
		"A style has the prices of its list, for every colour or for one; beside them the prices the shop agreed (net) and sales with their last day, which go before the list. Suppliers holds freight, least order, days on the way, cut-off and closed days.",
		"Prices come from price files and from hand entry, each with the day it holds from. A quote uses the price of its own day, and older prices stay.",
	},
	cardsPlace: {
		"What transfers and sent-out work cost: by area, by the sheet, by the length of a roll, or by the piece. The price table is a grid that takes a range pasted from a spreadsheet.",
		"Time says how long the supplier takes, and what it costs to have it sooner. Prices older than the shop's limit carry a mark.",
		"Press settings are common practice until the shop confirms them. The transfer maker's instructions and the garment's care label win over any preset.",
	},
	shopPlace: {
		"What an hour costs, how prices are made of costs, what is added for sizes, tax, the calendar, numbers and letterhead. A sample job beside the figures shows what a change does.",
		"Everything is kept in one file on this computer; its path stands on this page.",
	},
}

var keyTexts = [][2]string{
	{"Ctrl+1 … Ctrl+5", "the five places"},
	{"Ctrl+N", "a new quote"},
	{"Ctrl+S", "save; the draft also saves itself a moment after the last key"},
	{"Ctrl+Z, Ctrl+Y", "undo, redo"},
	{"Ctrl+T, F2", "turn to the customer and back"},
	{"Ctrl+P", "the quote as a PDF"},
	{"Ctrl+E", "the quote as an e-mail"},
	{"Ctrl+= and Ctrl+-", "larger and smaller text; Ctrl+0 for the usual size"},
	{"F1", "help on the place that is shown"},
	{"Tab, Shift+Tab", "the next and the previous field"},
	{"Arrows", "between size cells, in lists and tables"},
	{"Enter", "in a size cell: the next garment; on an amount: what it is made of; in a table: open"},
	{"Esc", "close a list or a page"},
	{"Letters", "in a choice: go to the option that begins so"},
}

var cautionTexts = [][2]string{
	{"Hot platen", "It burns. Keep hands and cords away, and let nobody reach across a closing press."},
	{"Air", "Heated inks, films and adhesives give off fumes: ventilate the room."},
	{"Power", "A heat press wants a circuit of its own that is rated for it."},
	{"Test first", "Press one garment and look at it before pressing the rest."},
	{"Settings", "Temperatures and times here are starting points from common practice. The transfer maker's instructions and the garment's care label come first."},
	{"Fabric", "Polyester dye can migrate into the print, and nylon can melt or shrink: read the fabric's heat limit."},
	{"Children", "Clothing for children carries legal duties of its own. Find out which hold where you sell."},
	{"Artwork", "Names, logos and pictures need their owner's permission."},
	{"Tax and labels", "What is taxed and what a label must say differs from place to place; the figures here are the shop's own settings."},
}
