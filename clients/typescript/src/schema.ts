// Generated from openapi_examples/openapi.json by openapi-typescript: `npm run generate`. Do not edit.

export interface paths {
    "/v1/layout": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Lay out the frets of a board, by address
         * @description The same as POST, with the question in the address, so that the answer can be linked to and cached.
         *
         *     A bare number is in `unit`: `scale=24.75&unit=in` and `scale=24.75in&unit=in` say the same.
         */
        get: operations["get_layout"];
        put?: never;
        /**
         * Lay out the frets of a board
         * @description Positions of the frets from the nut, in full double precision, every length in `unit`.
         *
         *     `from_nut` is measured from the nut in one go for every fret, so that errors do not add up. A bridge belongs
         *     at `to_true_end` plus the setback of the saddle, never at `to_layout_end`.
         */
        post: operations["layout"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/layout/batch": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Lay out the frets of many boards
         * @description Answer many questions of /v1/layout, each as a line of JSON.
         */
        post: operations["layout_batch"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/identification": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell rule and true scale from readings
         * @description Compare the spacing rules that a board may have been cut by with a few distances measured on it.
         *
         *     The verdict is "established" where one rule is at least as probable as `threshold` and explains the readings,
         *     "undecided" where the readings cannot tell the rules apart, and "none" where no rule explains them. The true
         *     scale is given under every verdict as well as the readings allow, with its uncertainty. A reading that contradicts
         *     all the others is named and set aside. Before anything is measured, equal spacing and the rule of 18 count 0.45
         *     each, and any other divisor from 16.5 to 19.5 together 0.10.
         */
        post: operations["identification"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/identification/plan": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Choose the frets to measure
         * @description Find the smallest set of frets that tells equal spacing and the rule of 18 apart with a given probability.
         *
         *     A shop's measuring card: for an instrument and the shortest scale to be expected, which frets to read from the
         *     nut. The rules are compared as in an identification with its default candidates and priors.
         */
        post: operations["identification_plan"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/identification/batch": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell rules and true scales of many boards
         * @description Answer many questions of /v1/identification, each as a line of JSON.
         *
         *     Boards that were measured alike, so that their lines differ in the distances alone, are the quickest: tens of
         *     thousands a second. The end line counts the verdicts.
         */
        post: operations["identification_batch"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/fingerboard": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Draw up a fingerboard
         * @description Every line of a board: outline, strings, slots with both edges of the kerf, nut, saddle, markers, and a cut list.
         *
         *     A fan board has a scale for either outer string and one fret that stays square; with one scale all frets are.
         *     By Accept or `format` the same board comes as JSON, as a cut list in CSV, as an SVG or DXF drawing in millimetres,
         *     as a PDF to be printed at 100 % (one long sheet, or pages to be glued together), or as a PNG preview. What stands
         *     on a drawing is said in `sheet`. Guard the blade, protect eyes and ears, and catch the dust of hard woods: the
         *     machine's own instructions, local codes and qualified practice come first.
         */
        post: operations["fingerboard"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/compensation": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Where saddle and nut go for these strings
         * @description Best saddle setback of every string, and with `"nut": "free"` its nut setback, on a board of any spacing rule.
         *
         *     Setbacks are counted from the end of the *true* scale (`saddle_setback`, positive away from the nut) and from
         *     the zero line of the fret pattern (`nut_setback`, positive away from fret 1); `saddle_from_nut` is what a rule
         *     reads from the nut's front edge to the break point. They leave the least sum of squared cents errors over the
         *     frets of `optimised_for`, against equal temperament or the `target`. A string is measured (`unit_mass` in g/m, `R`
         *     or `kappa` from a stretch test) or described by material, gauge and wraps. Lengths are in `unit`,
         *     tension in newtons.
         *
         *     What else may be asked: one setback for all strings (`"uniform"`), the best straight `slot`, saddles of limited
         *     `travel`, a `bridge` that is glued already, where to glue one for several string sets (`other_sets`, `reach`), and
         *     how the board compares with equal steps at the same true scale (`compare_with_equal`).
         */
        post: operations["compensation"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/compensation/batch": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Where saddle and nut go on many boards
         * @description Answer many questions of /v1/compensation, each as a line of JSON.
         */
        post: operations["compensation_batch"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/intonation": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * How far out of tune every note is, and why
         * @description Cents error of every string at every fret, open strings in tune, split into four causes that add up to it.
         *
         *     Any spacing rule, saddle and nut setbacks string by string, action, relief, finger position and target temperament.
         *     `spacing` is where the fret stands, `stretch` what pressing the string down does to its tension, `stiffness` its
         *     resistance to bending, and `geometry` the lengths: the setbacks and the slope of the string. Lengths are in `unit`.
         */
        post: operations["intonation"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/diagnosis": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * From cents that were heard to the moves that mend them
         * @description How far and which way to move saddle and nut, string by string, so that the readings come right.
         *
         *     Moves come with their intervals. Where saddle and nut can't be told apart, because one fret was read or the open
         *     string was not, the answer says so, gives what either would have to do alone, and the reading that would tell. What
         *     no move explains is compared with the spacing rules and, where two strings or more were read, fret by fret. The
         *     answer is the move that mends, not its cause: stretch, stiffness and misplaced break points sound alike.
         */
        post: operations["diagnosis"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/stretch-test": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * From a stretch test to R and kappa
         * @description Fit a line to the frequencies of a string that is made longer step by step.
         *
         *     The answer gives R = (L/f) df/dL and kappa = 2 R + 1, which compensation takes, with their uncertainties, the
         *     effective modulus where diameter and tension are known, and the readings that the others contradict. Three readings
         *     or more are needed; their uncertainties weigh them where given. A string that is stretched can break: protect your
         *     eyes and keep your face out of its line.
         */
        post: operations["stretch_test"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/nominal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell what a label can mean
         * @description List what a label can mean, each meaning with its true scale and the distance to fret 12 to look for.
         *
         *     A label is a name: 24.75 in may be the true scale under equal spacing, the layout scale of a rule-of-18 board (true
         *     scale 24.57 in), rounded to the nearest or up in favour of compensation, a string length with the setback in it,
         *     or a round number of the other system. With `readings` of the board, fret 12 at least, each meaning is weighed by
         *     the evidence of the identification, and `statement` is what to print instead of the label.
         */
        post: operations["nominal"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/nominal/batch": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell what many labels can mean
         * @description Answer many questions of /v1/nominal, each as a line of JSON.
         */
        post: operations["nominal_batch"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/assembly": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell whether parts belong together
         * @description Hold boards, blanks, bridges and saddle templates against each other before anything is glued.
         *
         *     For each pair: the mismatch in true scale and at the saddle line, what it does in cents at frets 5, 12 and the
         *     last, whether the saddle's travel takes it up, and the decision: "together" where the mismatch lies at least a
         *     guard band inside the `tolerance` (0.5 mm in true scale if left out), "apart" where it lies at least a guard band
         *     outside, "undecided" between, and then which readings would decide. The guard band is `guard_factor` standard
         *     uncertainties (2 if left out), after JCGM 106 and ISO 14253-1; several explanations of the readings are weighed by
         *     their probability. For a board that replaces another: where each fret falls, and whether joint and bridge agree.
         *     Fan parts are compared along both outer strings, and where they name their `square_fret`, by the slant of their
         *     saddle lines too.
         */
        post: operations["assembly"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/assembly/batch": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell of many assemblies whether their parts belong together
         * @description Answer many questions of /v1/assembly, each as a line of JSON.
         */
        post: operations["assembly_batch"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/conformity": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell whether a part is what its label says
         * @description Decide whether a part's true scale is the one it claims, within a tolerance.
         *
         *     `decision` follows the decision rule named (JCGM 106): simple acceptance, guarded acceptance or guarded rejection.
         *     `conformance` says what the readings prove, whatever the rule (ISO 14253-1). The consumer's risk is the
         *     probability that what is accepted does not conform, the producer's that what is rejected does; with a `process`
         *     there are global risks too, over all that is made and measured.
         */
        post: operations["conformity"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/label": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Print a label that states the true scale
         * @description Set a label for one part: true scale in large letters, rule, layout scale, stock number, date, and a QR code.
         *
         *     By Accept or `format` it comes as SVG or PDF at full size, as a PNG with `dpi` dots to the inch, or as JSON that
         *     says what stands on it. The code carries the text that /v1/label/read takes, or a `url` of yours. What is not
         *     established is not stated: a part that only a label describes gets its uncertainty printed beside the figure. The
         *     letters are in English, German or French by Accept-Language. A size too small is refused with the smallest one that
         *     works.
         */
        post: operations["label"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/label/read": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Read the text of a label's code
         * @description Turn the text that a scanner read from a label back into a part, for /v1/assembly to take as it stands.
         *
         *     The text is one line of ASCII, `TRUESCALE/1;id=...;kind=...;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;
         *     crc=...`: fields parted by semicolons, lengths with their unit to 0.001 mm or 0.00001 in, `u` the standard
         *     uncertainty of the true scale, and last a CRC-16 (polynomial 1021, start FFFF) of all before `;crc=`. Rules are
         *     `eighteenth`, `equal:12`, `divisor:17.835`, `listed:100,200,...` and `listed-repeat:...`. A text that was cut off or
         *     changed is refused.
         */
        post: operations["label_read"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/label/batch": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Print many labels, or say what they say
         * @description Answer many questions of /v1/label, each as a line of JSON. By Accept the answer is lines of JSON, the
         *     letters of each label, in English, and the text of its code, for a label printer's own program; or one PDF of all
         *     labels on sheets of A4 or letter label paper, to be printed at 100 %.
         *
         *     The parameters belong to the PDF: size of all labels, paper, the first label's place, gaps and edges; bare numbers
         *     in them are in `unit`. A line that names another size or printer than they do is bad. All lines are looked over
         *     before the first byte is sent. Bad ones are named in a problem, by pointers into the batch as if it were one array,
         *     blank lines left out: `/17/part/rule`; or, with `bad_lines=list`, the others are printed and the last pages list the
         *     bad ones. The PDF comes page by page, so that a file cut off has no end and is none. Its letters are in English,
         *     German or French by Accept-Language.
         */
        post: operations["label_batch"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/label/pages": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Print labels on sheets of label paper
         * @description Set up to 500 labels of one size side by side on A4 or letter paper, from any place of the first page on.
         *
         *     As many columns and rows are used as the paper holds, with the gaps and edges of your label paper; without them the
         *     labels are centred. By Accept or `format` they come as PDF, to be printed at 100 %, or as JSON that says how the
         *     labels lie and what their codes carry. Letters are in English, German or French by Accept-Language.
         */
        post: operations["label_pages"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/spec-sheet": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Draw up a part's spec sheet
         * @description Put on one page what a buyer has to know: true scale and how it is known, rule, layout scale, what a label means.
         *
         *     With it come the frets in millimetres, inches and shop fractions, recommended setbacks for a string set, the
         *     decision on conformity where the part claims something and was measured, what the part must not be combined with,
         *     and cautions. By Accept or `format` it comes as JSON, HTML or PDF. HTML is a page that prints on one sheet, or a
         *     fragment to be put into your own page, without scripts and with nothing to be fetched; its looks follow from the
         *     custom properties `--scalewright-ink`, `-paper`, `-line`, `-accent`, `-quiet`, `-font` and `-size`, which your page
         *     may set. The sentences are in English, German or French by Accept-Language.
         */
        post: operations["spec_sheet"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/tooling": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Judge a tool by many boards off it
         * @description Study boards off one tool: a gang of saws, a template, a CNC.
         *
         *     Bias of each slot against its commanded place from the tool's own zero, and again with scale and origin taken out;
         *     repeatability within and between boards; expanded uncertainty of the product; Cp and Cpk against the `tolerance`;
         *     drift over the sequence (a trend, or a step as after a changed blade: when and how large); slots to re-set, by how
         *     much, and the cents each costs. The `signature` tells this tool from others later.
         */
        post: operations["tooling"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/tooling/origin": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell which tool a board came from
         * @description Hold a board of unknown origin against the signatures of several tools, or find that none of them made it.
         */
        post: operations["tooling_origin"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/v1/rules": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * List the spacing rules
         * @description The spacing rules with their divisors, the cents of a step, the octave fret and how far it falls short.
         *
         *     With them come listed temperaments from published sources.
         */
        get: operations["rules"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/livez": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Whether the process lives
         * @description Answers as long as the process can answer at all; restart it when this stays silent.
         */
        get: operations["livez"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/readyz": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Whether requests are welcome
         * @description Answers when the service takes requests: it needs nothing beside itself, so from its start until its end.
         *
         *     From SIGTERM on it answers 503, while all else is still answered for a few seconds, so that whoever watches it
         *     can take new requests elsewhere.
         */
        get: operations["readyz"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/problems/{slug}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What a kind of problem means
         * @description What a problem's `type` stands for: each is the address of such a page.
         */
        get: operations["problem_kind"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        /**
         * AbsorptionOut
         * @description Whether the saddle's travel can take the mismatch up.
         */
        AbsorptionOut: {
            /**
             * Needed
             * @description How far the break point would have to move, positive away from the nut. [unit]
             */
            needed: number;
            /**
             * Absorbs
             * @description Whether it can: "yes", "no" or "undecided".
             * @enum {string}
             */
            absorbs: "yes" | "no" | "undecided";
            /**
             * Left
             * @description What stays of the mismatch with the saddle at the end of its travel. [unit]
             */
            left: number;
        };
        /**
         * AcrossLineOut
         * @description A line across the board, by its ends.
         */
        AcrossLineOut: {
            /** @description End on the side of the lowest string. */
            bass: components["schemas"]["PointOut"];
            /** @description End on the side of string 1. */
            treble: components["schemas"]["PointOut"];
        };
        /**
         * ActionIn
         * @description String height at a fret, as a player knows it.
         */
        ActionIn: {
            /**
             * Fret
             * @description Number of the fret.
             * @example 12
             */
            fret: number;
            /**
             * Height
             * @description Underside of the string above the top of that fret, string not pressed. [unit]
             * @example 3
             */
            height: number | string;
        };
        /**
         * AnyDivisorIn
         * @description Any constant divisor, equally likely between two bounds.
         */
        AnyDivisorIn: {
            /**
             * Lower
             * @description The smallest.
             * @default 16.5
             */
            lower?: number;
            /**
             * Upper
             * @description The largest.
             * @default 19.5
             */
            upper?: number;
        };
        /**
         * AssemblyIn
         * @description Do these parts belong together?
         */
        AssemblyIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Parts
             * @description Two parts or more. Of two boards the one named later is the replacement.
             */
            parts: components["schemas"]["PartIn"][];
            /**
             * Tolerance
             * @description How far two true scales may differ; 0.5 mm if left out.
             * @default 0.5
             * @example 0.5 mm
             */
            tolerance?: number | string;
            /**
             * Guard Factor
             * @description Guard band in standard uncertainties: 2 (default) is U of ISO 14253-1, 1.645 a one-sided 95 %.
             * @default 2
             * @example 2
             */
            guard_factor?: number;
            /**
             * Coverage
             * @description Probability that a stated interval holds.
             * @default 0.95
             */
            coverage?: number;
        };
        /**
         * AssemblyOut
         * @description Whether parts belong together.
         */
        AssemblyOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Decision
             * @description The worst of the pairs, the body joints and the slants: "apart" before "undecided" before "together".
             * @enum {string}
             */
            decision: "together" | "apart" | "undecided";
            /**
             * Statement
             * @description One sentence for a work order.
             */
            statement: string;
            /**
             * Pairs
             * @description Each part against each other.
             */
            pairs: components["schemas"]["PairOut"][];
            /**
             * Explanations
             * @description What the mismatches look like.
             */
            explanations: string[];
            /**
             * Parts
             * @description What is known of each part.
             */
            parts: components["schemas"]["PartScaleOut"][];
            /**
             * Replacements
             * @description Each board that follows another in the list, as its replacement.
             */
            replacements: components["schemas"]["ReplacementOut"][];
            /**
             * Slants
             * @description The saddle lines of fan parts that name their `square_fret`, each against each other.
             */
            slants: components["schemas"]["SlantOut"][];
            /**
             * Tolerance
             * @description How far true scales may differ. [unit]
             */
            tolerance: number;
            /**
             * Guard Factor
             * @description Guard band in standard uncertainties. [-]
             */
            guard_factor: number;
            /**
             * Coverage
             * @description Probability that a stated interval holds. [-]
             */
            coverage: number;
            /**
             * Notes
             * @description Cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * BlankOut
         * @description The smallest piece of wood that holds the board, before any allowance for trimming.
         */
        BlankOut: {
            /**
             * Length
             * @description Along the centre line. [unit]
             */
            length: number;
            /**
             * Width
             * @description Across. [unit]
             */
            width: number;
        };
        /**
         * BoardFretOut
         * @description One fret of a board.
         */
        BoardFretOut: {
            /**
             * Name
             * @description Its number, or what an extra fret is called.
             */
            name: string;
            /**
             * Fret
             * @description Its number by the rule; null for an extra fret.
             */
            fret: number | null;
            /** @description What the rule of either side intends. */
            cents: components["schemas"]["FretCentsOut"];
            /** @description Distance from the zero line along the outer strings. */
            from_zero: components["schemas"]["FretDistancesOut"];
            /**
             * On Centre Line
             * @description Where it crosses the centre line, from the zero line there. [unit]
             */
            on_centre_line: number;
            /**
             * Angle Degrees
             * @description How far it leans from square, positive where its bass end is nearer to the bridge. [degree]
             */
            angle_degrees: number;
            /** @description Its crossings with the outer strings, prolonged to them where it is cut short. */
            line: components["schemas"]["AcrossLineOut"];
            /** @description Its slot. */
            slot: components["schemas"]["FretSlotOut"];
            /**
             * Radius
             * @description Radius that the fretwire is bent to, along its own line; null for a flat board. [unit]
             */
            radius: number | null;
            /**
             * First String
             * @description The string nearest to string 1 that it crosses.
             */
            first_string: number;
            /**
             * Last String
             * @description The string farthest from string 1 that it crosses.
             */
            last_string: number;
            /**
             * Crossings
             * @description Where it crosses its strings, string 1 first.
             */
            crossings: components["schemas"]["StringCrossingOut"][];
        };
        /**
         * BoardRulesIn
         * @description Rules of the two outer strings, where they differ.
         */
        BoardRulesIn: {
            /**
             * Bass
             * @description Of the lowest string.
             */
            bass: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"];
            /**
             * Treble
             * @description Of string 1.
             */
            treble: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"];
        };
        /**
         * BoardScalesIn
         * @description Scales of the two outer strings of a fan board.
         */
        BoardScalesIn: {
            /**
             * Bass
             * @description Of the lowest string.
             * @example 25.5 in
             */
            bass: number | string;
            /**
             * Treble
             * @description Of string 1.
             * @example 24 in
             */
            treble: number | string;
        };
        /**
         * BoardSideOut
         * @description Rule and scales of one outer string.
         */
        BoardSideOut: {
            /** @description Its spacing rule. */
            rule: components["schemas"]["RuleOut"];
            /**
             * Layout Scale
             * @description The length that the rule was applied to. [unit]
             */
            layout_scale: number;
            /**
             * True Scale
             * @description Twice the distance from the zero line to the octave fret; null without one. [unit]
             */
            true_scale: number | null;
            /**
             * Octave Fret
             * @description Number of the fret that stands for the octave.
             */
            octave_fret: number | null;
        };
        /**
         * BoardStringsIn
         * @description The strings of a board: how many, and how they are spread across it.
         */
        BoardStringsIn: {
            /**
             * Count
             * @description Number of strings.
             * @example 6
             */
            count: number;
            /**
             * Nut Spread
             * @description From the centre of string 1 to the centre of the lowest, across the board at the zero line. [unit]
             * @example 36 mm
             */
            nut_spread?: (number | string) | null;
            /**
             * Saddle Spread
             * @description The same at the end of the scale. [unit]
             * @example 52 mm
             */
            saddle_spread?: (number | string) | null;
            /**
             * Gauges
             * @description Diameters from string 1 on: the gaps between neighbours are made equal; left out, the centres are. [unit]
             */
            gauges?: (number | string)[] | null;
        };
        /**
         * BodyJointOut
         * @description Whether the bridge still agrees when the joint frets are in line.
         */
        BodyJointOut: {
            /**
             * Fret
             * @description Fret at which the neck meets the body.
             */
            fret: number;
            /** @description Where it falls against the old one, placed from the datum. [unit] */
            offset: components["schemas"]["Estimate"];
            /** @description How much farther the new board's saddle line lies from its joint fret than the old one's. [unit] */
            joint_to_bridge: components["schemas"]["Estimate"];
            /**
             * Decision
             * @description Whether joint and bridge agree, within the tolerance.
             * @enum {string}
             */
            decision: "together" | "apart" | "undecided";
        };
        /**
         * BreakPointOut
         * @description Where one string breaks over a saddle that cannot give every string what it wants.
         */
        BreakPointOut: {
            /**
             * String
             * @description Number of the string, from 1 in the order given.
             */
            string: number;
            /**
             * Pitch
             * @description Open pitch, as given.
             */
            pitch: string;
            /**
             * Saddle Setback
             * @description From the end of the scale to the break point, positive away from the nut. [unit]
             */
            saddle_setback: number;
            /**
             * Nut Setback
             * @description From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]
             */
            nut_setback: number;
            /**
             * Reached
             * @description Whether it is the string's best.
             */
            reached: boolean;
            /**
             * Short By
             * @description How much further out its best lies; negative where the best lies nearer to the nut. [unit]
             */
            short_by: number;
            /**
             * Rms Cents
             * @description Root mean square of the errors that remain on the frets that count. [cent]
             */
            rms_cents: number;
            /**
             * Least Rms Cents
             * @description The same at the string's best. [cent]
             */
            least_rms_cents: number;
        };
        /**
         * BridgeAdviceOut
         * @description What helps a bridge that is glued already.
         */
        BridgeAdviceOut: {
            /**
             * Suggestion
             * @description The least intrusive remedy that is good enough, or the one that leaves least.
             * @enum {string}
             */
            suggestion: "as_it_is" | "within_saddle" | "wider_slot" | "slanted_slot" | "new_slot" | "moved_bridge" | "moved_bridge_and_new_slot";
            /**
             * Good Enough
             * @description What a string may keep beyond its least. [cent]
             */
            good_enough: number;
            /**
             * Remedies
             * @description The remedies, from the least intrusive to the most; those that the bridge does not allow are left out.
             */
            remedies: components["schemas"]["RemedyOut"][];
        };
        /**
         * CandidateIn
         * @description A rule that a board may have been cut by: a rule, or any divisor, or a temperament from the catalogue.
         */
        CandidateIn: {
            /**
             * Rule
             * @description A spacing rule: "equal", {"name": "divisor", "divisor": 17.817}, {"name": "equal", "steps": 19} ...
             */
            rule?: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"] | null;
            /** @description Instead: any constant divisor. */
            any_divisor?: components["schemas"]["AnyDivisorIn"] | null;
            /**
             * Temperament
             * @description Instead: a temperament from published sources; GET /v1/rules lists them.
             */
            temperament?: ("pythagorean" | "quarter_comma_meantone" | "ganassi_1543" | "dowland_1610") | null;
            /**
             * Prior
             * @description How likely it is before anything is measured, relative to the others.
             * @default 1
             */
            prior?: number;
        };
        /**
         * CandidateOut
         * @description How one rule fits the readings.
         */
        CandidateOut: {
            /** @description The rule; a free divisor appears with its least-squares value. */
            rule: components["schemas"]["RuleOut"];
            /**
             * Probability
             * @description Its probability among the candidates. [-]
             */
            probability: number;
            /** @description Layout scale under this rule. [unit] */
            layout_scale: components["schemas"]["Estimate"];
            /** @description True scale under this rule; null without an octave fret. [unit] */
            true_scale: components["schemas"]["Estimate"] | null;
            /** @description Nut offset under this rule; null where the nut plays no part. [unit] */
            nut_offset: components["schemas"]["Estimate"] | null;
            /**
             * Chi Square
             * @description Squared residuals in units of their variance, the nut's prior included. [-]
             */
            chi_square: number;
            /**
             * Degrees Of Freedom
             * @description Readings used less parameters fitted; a free nut offset brings its prior with it.
             */
            degrees_of_freedom: number;
            /**
             * P Value
             * @description Probability of a chi-square as large by chance; null without degrees of freedom. [-]
             */
            p_value: number | null;
            /**
             * Residuals
             * @description Reading minus prediction, positive where it reads long, in the order of the readings. [unit]
             */
            residuals: number[];
        };
        /**
         * CentsAtFretOut
         * @description What a misplaced saddle line does to one fretted note.
         */
        CentsAtFretOut: {
            /**
             * Fret
             * @description Number of the fret.
             */
            fret: number;
            /** @description Change of its pitch after the open string is tuned again; positive sharp. [cent] */
            cents: components["schemas"]["Estimate"];
        };
        /**
         * CentsReadingIn
         * @description One note on the tuner.
         */
        CentsReadingIn: {
            /**
             * String
             * @description Number of the string.
             * @example 1
             */
            string: number;
            /**
             * Fret
             * @description Number of the fret; 0 is the open string.
             * @example 12
             */
            fret: number;
            /**
             * Cents
             * @description How sharp it sounded against the pitch that this fret should give. [cent]
             * @example 4
             */
            cents: number;
            /**
             * Uncertainty
             * @description Standard uncertainty of this reading; left out, the tuner's. [cent]
             */
            uncertainty?: number | null;
        };
        /**
         * CompensationIn
         * @description Where do saddle and nut go for these strings on this board?
         */
        CompensationIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Scale
             * @description The scale, a number in `unit` or a text with its own unit; `scale_basis` says which scale it is.
             * @example 24 3/4 in
             */
            scale: number | string;
            /**
             * Rule
             * @description The spacing rule of the board.
             */
            rule: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"];
            /**
             * @description How high the strings lie.
             * @example {
             *       "nut": "1 mm",
             *       "saddle_above_nut": "4 mm"
             *     }
             */
            heights: components["schemas"]["HeightsIn"];
            /**
             * Frets
             * @description Number of frets of the board, 1 to 60.
             * @default 12
             * @example 12
             */
            frets?: number;
            /**
             * Scale Basis
             * @description Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret.
             * @default layout
             * @enum {string}
             */
            scale_basis?: "layout" | "true";
            /**
             * Tuning
             * @description Open pitches by the name of a common tuning, for strings that give no `pitch` of their own; as many strings as it has pitches, in this order: six_string_standard: E4 B3 G3 D3 A2 E2; six_string_dropped_d: E4 B3 G3 D3 A2 D2; seven_string_standard: E4 B3 G3 D3 A2 E2 B1; twelve_string_standard: E4 E4 B3 B3 G4 G3 D4 D3 A3 A2 E3 E2; baritone_six_string: B3 F#3 D3 A2 E2 B1; bass_four_string: G2 D2 A1 E1; bass_five_string: G2 D2 A1 E1 B0; bass_six_string: C3 G2 D2 A1 E1 B0; ukulele_high_g: A4 E4 C4 G4; ukulele_low_g: A4 E4 C4 G3; ukulele_baritone: E4 B3 G3 D3; mandolin: E5 A4 D4 G3; mandolin_paired: E5 E5 A4 A4 D4 D4 G3 G3; octave_mandolin: E4 A3 D3 G2; banjo_five_string: D4 B3 G3 D3 G4; banjo_tenor: A4 D4 G3 C3; banjo_plectrum: D4 B3 G3 C3.
             * @example six_string_standard
             */
            tuning?: ("six_string_standard" | "six_string_dropped_d" | "seven_string_standard" | "twelve_string_standard" | "baritone_six_string" | "bass_four_string" | "bass_five_string" | "bass_six_string" | "ukulele_high_g" | "ukulele_low_g" | "ukulele_baritone" | "mandolin" | "mandolin_paired" | "octave_mandolin" | "banjo_five_string" | "banjo_tenor" | "banjo_plectrum") | null;
            /**
             * Finger Behind Fret
             * @description How far behind the fret the finger presses the string down. [unit]
             * @default 0
             * @example 0
             */
            finger_behind_fret?: number | string;
            /**
             * Fret Height
             * @description Height of the frets above the board, where the finger presses the string down to it; left out, the string goes
             *     straight on behind the fret. [unit]
             * @example 1.1 mm
             */
            fret_height?: (number | string) | null;
            /** @description How far the fret tops leave the straight line; left out, they lie on it. */
            relief?: components["schemas"]["ReliefIn"] | null;
            /**
             * Sliding Length
             * @description Length of string beyond nut and saddle, to post and tail, that slides over them and stretches too. [unit]
             * @default 0
             * @example 120 mm
             */
            sliding_length?: number | string;
            /**
             * Target
             * @description Temperament that the board should sound in, each string against its own open note: equal steps, or listed cents,
             *     one for each fret; left out, the equal temperament nearest to the rule.
             */
            target?: ("equal" | components["schemas"]["EqualIn"] | components["schemas"]["ListedIn"]) | null;
            /**
             * Boundary Factor
             * @description Ends of the speaking length that are clamped: 0 none, 1 the fret, 2 both; measured 1.1 +/- 0.2.
             * @default 1
             */
            boundary_factor?: number;
            /**
             * Stiffness
             * @description What the stiffness of a fretted note follows: "position" (B0 X0/X_n, as in the published tables) or
             *     "length_and_tension" (its speaking length and the tension of the stretched string).
             * @default position
             * @enum {string}
             */
            stiffness?: "position" | "length_and_tension";
            /**
             * Strings
             * @description The strings, 1 to 24.
             * @example [
             *       {
             *         "R": 23.6,
             *         "diameter": "0.712 mm",
             *         "pitch": "E4",
             *         "unit_mass": 0.374
             *       }
             *     ]
             */
            strings: components["schemas"]["StringIn"][];
            /**
             * Nut
             * @description Whether the nut stays ("fixed"), is set back for every string as well ("free") or alike for all ("uniform").
             * @default fixed
             * @enum {string}
             */
            nut?: "fixed" | "free" | "uniform";
            /**
             * Saddle
             * @description Whether every string has a saddle setback of its own ("free") or all have one ("uniform").
             * @default free
             * @enum {string}
             */
            saddle?: "free" | "uniform";
            /** @description Which frets the setbacks are best for; left out, all frets of the board alike. */
            optimise_for?: components["schemas"]["OptimiseFor"] | null;
            /** @description Ask for the best straight slot. */
            slot?: components["schemas"]["StraightSlotIn"] | null;
            /** @description Ask for the best that saddles of limited travel give. */
            travel?: components["schemas"]["scalewright__wire__slot__TravelIn"] | null;
            /** @description Ask what helps a bridge that is glued already. */
            bridge?: components["schemas"]["GluedBridgeIn"] | null;
            /**
             * Other Sets
             * @description Other string sets, tunings and actions that the same bridge has to serve; asks where to glue it.
             */
            other_sets?: components["schemas"]["StringSetIn"][];
            /**
             * Reach
             * @description How far along the strings a break point can be moved on a bridge that is still to be glued: the thickness of its
             *     saddle, or the travel of adjustable ones; asks where to glue it. [unit]
             * @example 3 mm
             */
            reach?: (number | string) | null;
            /**
             * Compare With Equal
             * @description Compare with the same board slotted again in equal steps at the same true scale.
             * @default false
             */
            compare_with_equal?: boolean;
        };
        /**
         * CompensationOut
         * @description Saddle and nut positions of a set of strings.
         */
        CompensationOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /** @description Spacing rule of the board. */
            rule: components["schemas"]["RuleOut"];
            /**
             * Layout Scale
             * @description The length that the rule was applied to. [unit]
             */
            layout_scale: number;
            /**
             * True Scale
             * @description Twice the distance from the pattern's zero line to the octave fret; null without one. [unit]
             */
            true_scale: number | null;
            /**
             * Octave Fret
             * @description Number of the fret that stands for the octave.
             */
            octave_fret: number | null;
            /**
             * Setback From
             * @description Whose end the saddle setbacks are counted from.
             * @enum {string}
             */
            setback_from: "true_scale" | "layout_scale";
            /**
             * Nut
             * @description Whether the nut was set back too.
             * @enum {string}
             */
            nut: "fixed" | "free" | "uniform";
            /**
             * Saddle
             * @description Whether every string has a setback of its own ("free") or all have one ("uniform").
             * @enum {string}
             */
            saddle: "fixed" | "free" | "uniform";
            heights: components["schemas"]["HeightsOut"];
            /** @description Frets and weights that the setbacks are best for. */
            optimised_for: components["schemas"]["PreferenceOut"];
            /**
             * Target Cents
             * @description Pitch above the open string that every fret should give. [cent]
             */
            target_cents: number[];
            /**
             * Boundary Factor
             * @description Ends of the speaking length that were taken as clamped.
             */
            boundary_factor: number;
            /**
             * Stiffness
             * @description What the stiffness of a fretted note followed.
             * @enum {string}
             */
            stiffness: "position" | "length_and_tension";
            /**
             * Rms Cents
             * @description Root mean square of what remains, over all strings and the frets that count. [cent]
             */
            rms_cents: number;
            /**
             * Strings
             * @description The strings, in the order given.
             */
            strings: components["schemas"]["StringCompensationOut"][];
            /** @description The best straight slot; null unless asked for. */
            slot: components["schemas"]["SlotFitOut"] | null;
            /** @description What saddles of limited travel give; null unless asked for. */
            travel: components["schemas"]["TravelFitOut"] | null;
            /** @description What helps a bridge that is glued already; null unless asked for. */
            bridge: components["schemas"]["BridgeAdviceOut"] | null;
            /** @description Where to glue a bridge for all the string sets; null unless asked for. */
            placement: components["schemas"]["PlacementOut"] | null;
            /** @description The same board in equal steps at the same true scale; null unless asked for. */
            reslotted: components["schemas"]["ReslottingOut"] | null;
            /**
             * Notes
             * @description What the numbers of all strings rest on.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * ConformityIn
         * @description Is this part what its label or its definition says, within this tolerance?
         */
        ConformityIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * @description The part: what it claims (`true_scale`, `layout_scale` with `rule`, or `label`), and `readings`.
             *     Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together.
             */
            part: components["schemas"]["PartIn"];
            /**
             * Tolerance
             * @description How far its true scale may be from the claimed one; 0.5 mm if left out.
             * @default 0.5
             * @example 0.5 mm
             */
            tolerance?: number | string;
            /**
             * Decision Rule
             * @description "simple_acceptance": accept within the tolerance; "guarded_acceptance": within the tolerance less the guard band;
             *     "guarded_rejection": reject beyond the tolerance plus the guard band alone (JCGM 106).
             * @default guarded_acceptance
             * @enum {string}
             */
            decision_rule?: "simple_acceptance" | "guarded_acceptance" | "guarded_rejection";
            /**
             * Guard Factor
             * @description Guard band in standard uncertainties: 2 (default) is U of ISO 14253-1, 1.645 a one-sided 95 %.
             * @default 2
             * @example 2
             */
            guard_factor?: number;
            /**
             * Label Means
             * @description What the label claims, where no scale is stated: "true_scale", or "layout_scale" of the `rule` stated (the rule
             *     of 18 without one). Left out: the layout scale where the part states a rule, the true scale under equal spacing
             *     where it does not.
             */
            label_means?: ("true_scale" | "layout_scale") | null;
            /** @description What is known of parts like this; it enters the probabilities, and gives global risks. */
            process?: components["schemas"]["ProcessIn"] | null;
            /**
             * Coverage
             * @description Probability that a stated interval holds.
             * @default 0.95
             */
            coverage?: number;
        };
        /**
         * ConformityOut
         * @description Whether a part is what it claims to be.
         */
        ConformityOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Decision
             * @description By the decision rule and the measured value.
             * @enum {string}
             */
            decision: "accept" | "reject";
            /**
             * Conformance
             * @description What the readings prove, whatever the rule: "conforming", "undecided" or "nonconforming" (ISO 14253-1).
             * @enum {string}
             */
            conformance: "conforming" | "undecided" | "nonconforming";
            /**
             * Statement
             * @description One sentence for a work order.
             */
            statement: string;
            /**
             * Part
             * @description Your name for it.
             */
            part: string;
            /**
             * Claimed True Scale
             * @description The true scale that it claims. [unit]
             */
            claimed_true_scale: number;
            /** @description The spacing rule that it claims. */
            claimed_rule: components["schemas"]["RuleOut"] | null;
            /** @description The true scale that was measured. [unit] */
            true_scale: components["schemas"]["Estimate"];
            /** @description Measured minus claimed true scale. [unit] */
            deviation: components["schemas"]["Estimate"];
            /**
             * Rule Agrees
             * @description Whether the readings show the claimed spacing rule: "yes", "no" or "undecided".
             * @enum {string}
             */
            rule_agrees: "yes" | "no" | "undecided";
            /**
             * Decision Rule
             * @description The decision rule.
             * @enum {string}
             */
            decision_rule: "simple_acceptance" | "guarded_acceptance" | "guarded_rejection";
            /**
             * Tolerance
             * @description How far the true scale may be from the claimed one. [unit]
             */
            tolerance: number;
            /**
             * Guard Band
             * @description Distance between tolerance limits and acceptance limits under a guarded rule. [unit]
             */
            guard_band: number;
            /** @description Measured deviations that are accepted; null where the guard bands leave none. [unit] */
            acceptance: components["schemas"]["IntervalOut"] | null;
            /**
             * Conformance Probability
             * @description Probability that the true scale lies within the tolerance. [-]
             */
            conformance_probability: number;
            /**
             * Consumer Risk
             * @description Probability that the accepted part does not conform; null where it was rejected. [-]
             */
            consumer_risk: number | null;
            /**
             * Producer Risk
             * @description Probability that the rejected part conforms; null where it was accepted. [-]
             */
            producer_risk: number | null;
            /** @description Risks over all parts of a process; null without one. */
            global_risks: components["schemas"]["GlobalRisksOut"] | null;
            /**
             * Coverage
             * @description Probability that a stated interval holds. [-]
             */
            coverage: number;
            /**
             * Notes
             * @description Cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * CutListOut
         * @description Settings of a saw for every slot of a board.
         */
        CutListOut: {
            /**
             * Origin
             * @description Where all distances start.
             * @enum {string}
             */
            origin: "zero_line" | "nut_end" | "far_end";
            /**
             * Blade
             * @description Which part of the blade is set.
             * @enum {string}
             */
            blade: "centre" | "nut_side" | "bridge_side";
            /**
             * Step
             * @description What `set_to` is rounded to; null for no rounding. [unit]
             */
            step: number | null;
            /**
             * Kerf
             * @description Width of the blade's cut. [unit]
             */
            kerf: number;
            /**
             * Cuts
             * @description The slots, in the order in which they stand on the board.
             */
            cuts: components["schemas"]["CutOut"][];
            /** @description The smallest piece of wood that holds the board. */
            smallest_blank: components["schemas"]["BlankOut"];
            /**
             * What If
             * @description What rounding costs: to the step, and to a 64th of an inch; from one origin, and from fret to fret.
             */
            what_if: components["schemas"]["WhatIfOut"][];
        };
        /**
         * CutOut
         * @description One slot of a cut list; all distances from the origin, along the centre line.
         */
        CutOut: {
            /**
             * Name
             * @description What the fret is called.
             */
            name: string;
            /**
             * Running
             * @description To the middle of the slot, exactly. [unit]
             */
            running: number;
            /**
             * Near Edge
             * @description To the face of the blade nearer to the origin. [unit]
             */
            near_edge: number;
            /**
             * Far Edge
             * @description To the face farther from the origin. [unit]
             */
            far_edge: number;
            /**
             * Set To
             * @description What to set, for the part of the blade that is set, rounded to the step. [unit]
             */
            set_to: number;
            /**
             * Error
             * @description By how much rounding moves the slot, positive towards the bridge. [unit]
             */
            error: number;
            /**
             * Error Cents
             * @description How much sharper the fret sounds for it; null where it would stand beyond the end of the scale. [cent]
             */
            error_cents: number | null;
            /**
             * Length
             * @description Length of the slot. [unit]
             */
            length: number;
            /**
             * Angle Degrees
             * @description How far the slot leans, positive where its bass end is nearer to the bridge. [degree]
             */
            angle_degrees: number;
            /**
             * Depth
             * @description Depth below the surface; null where no tang was given. [unit]
             */
            depth: number | null;
        };
        /**
         * DecidingReadingsOut
         * @description Readings that are expected to decide.
         */
        DecidingReadingsOut: {
            /**
             * Readings
             * @description In the order of their worth; empty where none can be expected to decide.
             */
            readings: components["schemas"]["ReadingOnOut"][];
            /**
             * Expected Uncertainty
             * @description Standard uncertainty that the mismatch in true scale will then have. [unit]
             */
            expected_uncertainty: number;
            /**
             * Needed Uncertainty
             * @description Standard uncertainty below which a mismatch like this is decided. [unit]
             */
            needed_uncertainty: number;
            /**
             * Text
             * @description What to do, in words.
             */
            text: string;
        };
        /**
         * DiagnosisIn
         * @description What mends a board that plays out of tune?
         */
        DiagnosisIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Scale
             * @description The scale, a number in `unit` or a text with its own unit; `scale_basis` says which scale it is.
             * @example 24 3/4 in
             */
            scale: number | string;
            /**
             * Rule
             * @description The spacing rule of the board, as far as it is known.
             */
            rule: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"];
            /**
             * Readings
             * @description The notes that were read, in any order; a note may be read repeatedly. Half a cent between readings of one
             *     fretted note is no contradiction, however fine the tuner: a finger does not press twice alike. Of the open string
             *     only the tuner's uncertainty is allowed for.
             * @example [
             *       {
             *         "cents": 1.5,
             *         "fret": 1,
             *         "string": 1
             *       },
             *       {
             *         "cents": 6,
             *         "fret": 12,
             *         "string": 1
             *       }
             *     ]
             */
            readings: components["schemas"]["CentsReadingIn"][];
            /**
             * Frets
             * @description Number of frets of the board, 1 to 60.
             * @default 24
             * @example 22
             */
            frets?: number;
            /**
             * Scale Basis
             * @description Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret.
             * @default layout
             * @enum {string}
             */
            scale_basis?: "layout" | "true";
            /**
             * Relative To
             * @description What the cents were read against: the string's own open note, or the tuner's pitches ("tuner"); then read the
             *     open string, fret 0, as well.
             * @default open_string
             * @enum {string}
             */
            relative_to?: "open_string" | "tuner";
            /**
             * Tuner Uncertainty
             * @description Standard uncertainty of one reading. [cent]
             * @default 1
             * @example 1
             */
            tuner_uncertainty?: number;
            /**
             * Resolution
             * @description Step of the tuner's display; its square over twelve adds to the variance. [cent]
             * @default 0
             */
            resolution?: number;
            /**
             * Model Uncertainty
             * @description What stretch and stiffness of a string leave where saddle and nut are best. [cent]
             * @default 0.15
             */
            model_uncertainty?: number;
            /**
             * Nut May Move
             * @description Whether the nut is a suspect too; false where it is known to be right or has to stay.
             * @default true
             */
            nut_may_move?: boolean;
            /**
             * Target
             * @description Temperament that the cents were read in; left out, the equal temperament nearest to the rule.
             */
            target?: ("equal" | components["schemas"]["EqualIn"] | components["schemas"]["ListedIn"]) | null;
            /**
             * Coverage
             * @description Probability that the intervals of the answer hold.
             * @default 0.95
             */
            coverage?: number;
        };
        /**
         * DiagnosisOut
         * @description What mends a board that plays out of tune.
         */
        DiagnosisOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /** @description Spacing rule that the board was said to have. */
            rule: components["schemas"]["RuleOut"];
            /**
             * Layout Scale
             * @description The length that the rule was applied to. [unit]
             */
            layout_scale: number;
            /**
             * True Scale
             * @description Twice the distance from the pattern's zero line to the octave fret. [unit]
             */
            true_scale: number;
            /**
             * Coverage
             * @description Probability that the intervals hold.
             */
            coverage: number;
            /**
             * Strings
             * @description The strings that were read, by number.
             */
            strings: components["schemas"]["StringDiagnosisOut"][];
            /** @description What is left for the frets to explain. */
            spacing: components["schemas"]["SpacingDiagnosisOut"];
            /**
             * Suspect Readings
             * @description Readings to take again.
             */
            suspect_readings: components["schemas"]["SuspectCentsOut"][];
            /**
             * Cannot Tell
             * @description What can't be told apart with these frets or this tuner.
             */
            cannot_tell: components["schemas"]["Note"][];
            /**
             * Next Readings
             * @description What to read next; empty where nothing more is needed.
             */
            next_readings: components["schemas"]["ReadNextOut"][];
            /**
             * Remaining Rms Cents
             * @description Root mean square of the fretted readings after the moves; the tuner's own scatter is in it. [cent]
             */
            remaining_rms_cents: number;
            /**
             * Statement
             * @description One sentence for the work order.
             */
            statement: string;
            /**
             * Notes
             * @description What the numbers rest on, and cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * DivisorIn
         * @description Any constant divisor: each fret takes one part in `divisor` of the length that is left.
         */
        DivisorIn: {
            /**
             * Name
             * @constant
             */
            name: "divisor";
            /**
             * Divisor
             * @description What the length that is left is divided by, 17.817 for instance.
             */
            divisor: number;
        };
        /**
         * DriftOut
         * @description How positions move over the boards.
         */
        DriftOut: {
            /**
             * Kind
             * @description Whether they wander steadily or jump.
             * @enum {string}
             */
            kind: "trend" | "step";
            /**
             * P Value
             * @description Probability of a movement as large by chance, corrected for the places where a step was looked for. [-]
             */
            p_value: number;
            /** @description Change from one board to the next by a straight line. [unit] */
            trend: components["schemas"]["Estimate"];
            /** @description The jump, for a step. */
            step: components["schemas"]["JumpOut"] | null;
            /** @description Where they now stand against the commanded positions, one slot against the middle of the others. [unit] */
            present: components["schemas"]["Estimate"];
        };
        /**
         * EighteenthIn
         * @description The rule of 18: each fret takes one eighteenth of the length that is left.
         */
        EighteenthIn: {
            /**
             * Name
             * @constant
             */
            name: "eighteenth";
            /**
             * Divisor
             * @description As an answer states it: 18.
             */
            divisor?: number | null;
        };
        /**
         * EqualIn
         * @description Equal spacing: every step is the same interval.
         */
        EqualIn: {
            /**
             * Name
             * @constant
             */
            name: "equal";
            /**
             * Steps
             * @description Steps to the octave.
             * @default 12
             */
            steps?: number;
            /**
             * Divisor
             * @description As an answer states it; it has to be that of the steps.
             */
            divisor?: number | null;
        };
        /**
         * Estimate
         * @description A measured quantity, in the unit of the answer, with its coverage interval (JCGM 100).
         */
        Estimate: {
            /**
             * Value
             * @description The best estimate.
             */
            value: number;
            /**
             * Standard Uncertainty
             * @description Its standard uncertainty (k = 1).
             */
            standard_uncertainty: number;
            /**
             * Lower
             * @description Lower end of the interval at the stated coverage.
             */
            lower: number;
            /**
             * Upper
             * @description Upper end of the interval at the stated coverage.
             */
            upper: number;
        };
        /**
         * FanScaleIn
         * @description True scales of a fan board along its two outer strings.
         */
        FanScaleIn: {
            /**
             * Bass
             * @description Along the lowest string.
             * @example 27 in
             */
            bass: number | string;
            /**
             * Treble
             * @description Along the highest string.
             * @example 25.5 in
             */
            treble: number | string;
        };
        /**
         * FanScaleOut
         * @description True scales of a fan board along its two outer strings.
         */
        FanScaleOut: {
            /**
             * Bass
             * @description Along the lowest string. [unit]
             */
            bass: number;
            /**
             * Treble
             * @description Along the highest string. [unit]
             */
            treble: number;
        };
        /**
         * Fault
         * @description One thing to change in a request.
         */
        Fault: {
            /**
             * Pointer
             * @description Where in the request, as a JSON pointer (RFC 6901); for a query the name of the parameter after a slash.
             */
            pointer: string;
            /**
             * Code
             * @description What is wrong, for programs; it stays the same.
             */
            code: string;
            /**
             * Detail
             * @description What is wrong and what to change, for people.
             */
            detail: string;
            /**
             * Example
             * @description A value that is accepted at this place, where one can be given.
             * @default null
             */
            example?: unknown;
        };
        /**
         * FingerboardIn
         * @description Every line of this fingerboard?
         */
        FingerboardIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Scale
             * @description The scale, or `bass` and `treble` scales of a fan board; `scale_basis` says which scale it is.
             * @example 25.5 in
             */
            scale: (number | string) | components["schemas"]["BoardScalesIn"];
            /**
             * Rule
             * @description The spacing rule, or a `bass` and a `treble` rule.
             */
            rule: (("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"]) | components["schemas"]["BoardRulesIn"];
            /**
             * Frets
             * @description Number of frets, 1 to 60.
             * @example 22
             */
            frets: number;
            /**
             * @description The strings. Of their spreads, `margins` and `widths` two are given, and the third follows.
             * @example {
             *       "count": 6,
             *       "nut_spread": "36 mm",
             *       "saddle_spread": "52 mm"
             *     }
             */
            strings: components["schemas"]["BoardStringsIn"];
            /**
             * Margins
             * @description From the centre of an outer string to the edge beside it: one length, or four. [unit]
             */
            margins?: ((number | string) | components["schemas"]["MarginsIn"]) | null;
            /** @description Widths of the board at the zero line and at the last fret. [unit] */
            widths?: components["schemas"]["WidthsIn"] | null;
            /**
             * Scale Basis
             * @description Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret.
             * @default layout
             * @enum {string}
             */
            scale_basis?: "layout" | "true";
            /**
             * Scale Along
             * @description What the scale is measured along: the "centre_line" of the board, or the outer "string" itself.
             * @default centre_line
             * @enum {string}
             */
            scale_along?: "centre_line" | "string";
            /**
             * Square Fret
             * @description The fret of a fan board that stays square to the centre line, 0 for the nut; needed where the scales differ.
             */
            square_fret?: number | null;
            /**
             * Handedness
             * @description Which hand plucks; a "left" board is the mirror image.
             * @default right
             * @enum {string}
             */
            handedness?: "right" | "left";
            /**
             * Extension
             * @description How far the board goes on past the last fret; 10 mm if left out. [unit]
             * @default 10
             * @example 34.9 mm
             */
            extension?: number | string;
            /**
             * Far End
             * @description How the far end is cut: "square" to the centre line or "parallel" to the last fret.
             * @default square
             * @enum {string}
             */
            far_end?: "square" | "parallel";
            /**
             * Zero Fret
             * @description Whether a fret stands on the zero line, with the nut behind it as a guide.
             * @default false
             */
            zero_fret?: boolean;
            /**
             * Behind Zero Fret
             * @description How far the board goes on behind a zero fret, where there is one; 5 mm if left out. [unit]
             * @default 5
             * @example 34.9 mm
             */
            behind_zero_fret?: number | string;
            /**
             * Nut Setback
             * @description From the zero line to the nut's front edge, positive away from fret 1. [unit]
             * @default 0
             * @example -0.4 mm
             */
            nut_setback?: number | string;
            /**
             * Saddle Setbacks
             * @description From the end of each string's scale to its break point on the saddle, string 1 first. [unit]
             */
            saddle_setbacks?: (number | string)[] | null;
            /**
             * @default {
             *       "kerf": 0.6,
             *       "blind_inset": 0,
             *       "clearance": 0
             *     }
             */
            slots?: components["schemas"]["SlotsIn"];
            /**
             * Radius
             * @description Radius of the surface, or `nut` and `last_fret` radii of a cone; flat if left out. [unit]
             */
            radius?: ((number | string) | components["schemas"]["SurfaceRadiusIn"]) | null;
            /**
             * Partial Frets
             * @description Frets that cross some strings only, and extra frets between those of the rule.
             */
            partial_frets?: components["schemas"]["PartialFretIn"][];
            /**
             * Markers
             * @description Frets with a position marker before them; left out, the usual ones where twelve frets make an octave.
             *
             *     What lies beyond the last fret is left out, with a note.
             */
            markers?: number[] | null;
            /**
             * Double Markers
             * @description Those of them that bear two, each of them among the markers; 12 and 24 if left out.
             */
            double_markers?: number[] | null;
            /**
             * @default {
             *       "origin": "zero_line",
             *       "blade": "centre"
             *     }
             */
            saw?: components["schemas"]["SawIn"];
            /**
             * @description What stands on a drawing, and what paper it goes on; no part of the JSON answer.
             * @default {
             *       "title": "",
             *       "paper": "long",
             *       "overlap": 15,
             *       "pixels": 1600
             *     }
             */
            sheet?: components["schemas"]["SheetIn"];
        };
        /**
         * FingerboardOut
         * @description A board with all its lines. Its x axis is the centre line, its zero where the zero line crosses it.
         */
        FingerboardOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Statement
             * @description One sentence for a drawing or a work order.
             */
            statement: string;
            /**
             * Handedness
             * @description Which hand plucks.
             * @enum {string}
             */
            handedness: "right" | "left";
            /**
             * Measured
             * @description What the scales are measured along.
             * @enum {string}
             */
            measured: "centre_line" | "string";
            /**
             * Square Fret
             * @description The fret that is square to the centre line; with equal scales and rules all are.
             */
            square_fret: number;
            /**
             * Zero Fret
             * @description Whether a fret stands on the zero line.
             */
            zero_fret: boolean;
            true_scale: components["schemas"]["TrueScalesOut"];
            /** @description Rule and scales of the lowest string. */
            bass: components["schemas"]["BoardSideOut"];
            /** @description Rule and scales of string 1. */
            treble: components["schemas"]["BoardSideOut"];
            /**
             * Strings
             * @description The strings, string 1 first.
             */
            strings: components["schemas"]["StringLineOut"][];
            /**
             * Frets
             * @description The frets, from the nut on.
             */
            frets: components["schemas"]["BoardFretOut"][];
            /** @description Where the rule puts the nut, from edge to edge. */
            zero_line: components["schemas"]["AcrossLineOut"];
            /** @description Front edge of the nut, from edge to edge. */
            nut: components["schemas"]["AcrossLineOut"];
            /** @description Where the scales of the outer strings end. */
            scale_end: components["schemas"]["AcrossLineOut"];
            /** @description Where the outer strings break over the saddle. */
            saddle: components["schemas"]["AcrossLineOut"];
            /**
             * Outline
             * @description Corners of the board: nut end bass and treble, far end treble and bass.
             */
            outline: components["schemas"]["PointOut"][];
            /** @description From one end of the board to the other. */
            centre_line: components["schemas"]["SegmentOut"];
            /**
             * Markers
             * @description Position markers.
             */
            markers: components["schemas"]["MarkerOut"][];
            /** @description Settings of a saw for every slot. */
            cut_list: components["schemas"]["CutListOut"];
            /**
             * Notes
             * @description What to mind.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * FretCentsOut
         * @description Pitch of a fret on either side.
         */
        FretCentsOut: {
            /**
             * Bass
             * @description By the rule of the lowest string. [cent]
             */
            bass: number;
            /**
             * Treble
             * @description By the rule of string 1. [cent]
             */
            treble: number;
        };
        /**
         * FretDistancesOut
         * @description Distance of a fret from the zero line on either side, measured as `measured` says.
         */
        FretDistancesOut: {
            /**
             * Bass
             * @description Along the lowest string. [unit]
             */
            bass: number;
            /**
             * Treble
             * @description Along string 1. [unit]
             */
            treble: number;
        };
        /**
         * FretErrorOut
         * @description An error that all strings share at one fret.
         */
        FretErrorOut: {
            /**
             * Fret
             * @description Number of the fret.
             */
            fret: number;
            /**
             * @description How sharp the fret is beyond what saddle, nut and the spacing rule (the one that is established, or else the one
             *     that was given) explain, if beside it only `misplaced` frets are off. [cent]
             */
            error: components["schemas"]["Estimate"];
            /** @description How much too near to the saddle it stands. [unit] */
            displacement: components["schemas"]["Estimate"];
            /**
             * Misplaced
             * @description Whether that is more than chance allows among so many frets.
             */
            misplaced: boolean;
        };
        /**
         * FretOffsetOut
         * @description Where a fret of the new board falls against the same fret of the old one.
         */
        FretOffsetOut: {
            /**
             * Fret
             * @description Number of the fret.
             */
            fret: number;
            /** @description New minus old, both boards placed from the same datum; positive farther from the nut. [unit] */
            offset: components["schemas"]["Estimate"];
        };
        /**
         * FretOut
         * @description Where one fret stands.
         */
        FretOut: {
            /**
             * Fret
             * @description Number of the fret, counted from the nut.
             */
            fret: number;
            /**
             * From Nut
             * @description Distance from the nut. [unit]
             */
            from_nut: number;
            /**
             * From Previous
             * @description Distance from the fret before it, or from the nut for fret 1. [unit]
             */
            from_previous: number;
            /**
             * To Layout End
             * @description Distance to the end of the layout scale. [unit]
             */
            to_layout_end: number;
            /**
             * To True End
             * @description Distance to the end of the true scale, where a bridge is measured from; null without one. [unit]
             */
            to_true_end: number | null;
            /**
             * Cents
             * @description 1200 log2(S / (S - from_nut)), with S the layout scale. [cent]
             */
            cents: number;
            /** @description The mark of an inch rule nearest to `from_nut`, where `fractions` were asked for. */
            from_nut_fraction?: components["schemas"]["ShopFraction"] | null;
        };
        /**
         * FretSlotOut
         * @description The slot of a fret.
         */
        FretSlotOut: {
            /** @description Middle of its end on the bass side. */
            bass: components["schemas"]["PointOut"];
            /** @description Middle of its end on the treble side. */
            treble: components["schemas"]["PointOut"];
            /** @description Edge of the kerf on the side of the nut. */
            near_edge: components["schemas"]["AcrossLineOut"];
            /** @description Edge of the kerf on the side of the bridge. */
            far_edge: components["schemas"]["AcrossLineOut"];
            /**
             * Length
             * @description Length of its middle line. [unit]
             */
            length: number;
            /**
             * Depth
             * @description Depth below the surface, the same all along; null where no tang was given. [unit]
             */
            depth: number | null;
            /**
             * Flat Depth
             * @description Depth in the middle of the board of a slot whose bottom is flat; null without a tang. [unit]
             */
            flat_depth: number | null;
            /**
             * Drop
             * @description How much lower the rounded surface lies at the slot's ends than in its middle. [unit]
             */
            drop: number;
        };
        /**
         * FrettedNoteOut
         * @description How sharp one fretted note is with the open string in tune.
         */
        FrettedNoteOut: {
            /**
             * Fret
             * @description Number of the fret.
             */
            fret: number;
            /**
             * Uncompensated
             * @description With saddle and nut at the ends of the scale; positive sharp. [cent]
             */
            uncompensated: number;
            /**
             * Compensated
             * @description With both where this answer puts them; positive sharp. [cent]
             */
            compensated: number;
        };
        /**
         * GlobalRisksOut
         * @description Shares of all that a process makes and an instrument measures.
         */
        GlobalRisksOut: {
            /**
             * Consumer
             * @description Accepted though it does not conform. [-]
             */
            consumer: number;
            /**
             * Producer
             * @description Rejected though it conforms. [-]
             */
            producer: number;
        };
        /**
         * GluedBridgeIn
         * @description A bridge as it stands on an instrument, measured from the nut's front edge along the strings.
         */
        GluedBridgeIn: {
            /**
             * Slot At First
             * @description To the centre line of the slot, along the first string. [unit]
             * @example 651 mm
             */
            slot_at_first: number | string;
            /**
             * Slot At Last
             * @description To the centre line of the slot, along the last string. [unit]
             * @example 652.5 mm
             */
            slot_at_last: number | string;
            /**
             * Thickness
             * @description Thickness of the saddle. [unit]
             * @example 2.5 mm
             */
            thickness: number | string;
            /**
             * Spread
             * @description Distance across the bridge from the first string to the last; strings lie evenly between. [unit]
             * @example 58 mm
             */
            spread?: (number | string) | null;
            /**
             * Across
             * @description Instead of `spread`: where every string crosses the bridge, from the first one's place, ascending. [unit]
             */
            across?: (number | string)[] | null;
            /**
             * Widest Slot
             * @description Widest slot that the wood around it allows; left out, a wider or slanted slot is not considered. [unit]
             * @example 5 mm
             */
            widest_slot?: (number | string) | null;
            /**
             * Front
             * @description To where a new slot may begin at the earliest; left out, without a limit. [unit]
             * @example 646 mm
             */
            front?: (number | string) | null;
            /**
             * Back
             * @description To where a new slot has to end; left out, without a limit. [unit]
             * @example 660 mm
             */
            back?: (number | string) | null;
            /**
             * Good Enough
             * @description Cents rms that a string may keep beyond its least before another remedy is looked for. [cent]
             * @default 1
             */
            good_enough?: number;
        };
        /**
         * Health
         * @description State of the service.
         */
        Health: {
            /**
             * Status
             * @description Always "ok": a service that is not answers with another HTTP status or not at all.
             * @constant
             */
            status: "ok";
            /**
             * Version
             * @description Version of the service.
             */
            version: string;
        };
        /**
         * HeightsIn
         * @description How high the strings lie above the plane of the fret tops, not pressed; all strings alike.
         */
        HeightsIn: {
            /**
             * Nut
             * @description Underside of the strings at the nut. [unit]
             * @example 1
             */
            nut: number | string;
            /**
             * Saddle Above Nut
             * @description How much higher the strings are at the saddle than at the nut. [unit]
             * @example 4
             */
            saddle_above_nut?: (number | string) | null;
            /** @description Height at a fret; instead of `saddle_above_nut`. */
            action?: components["schemas"]["ActionIn"] | null;
        };
        /**
         * HeightsOut
         * @description How high the strings were taken to lie.
         */
        HeightsOut: {
            /**
             * Nut
             * @description Underside of the strings above the plane of the fret tops at the nut. [unit]
             */
            nut: number;
            /**
             * Saddle Above Nut
             * @description How much higher they are at the saddle. [unit]
             */
            saddle_above_nut: number;
        };
        /**
         * IdentificationIn
         * @description Which rule was this board cut by, and what is its scale?
         */
        IdentificationIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Instrument Uncertainty
             * @description Standard uncertainty of one reading (k = 1). A caliper read with care: about 0.05 mm.
             */
            instrument_uncertainty?: (number | string) | null;
            /**
             * Resolution
             * @description Smallest step that the instrument shows; adds its square over 12 to the variance of every reading.
             * @default 0
             * @example 0.05 mm
             */
            resolution?: number | string;
            /**
             * Scale Error
             * @description Relative standard uncertainty that all readings of the instrument share; 0.001 is 1 mm in a metre.
             * @default 0
             */
            scale_error?: number;
            /**
             * Tooling Scatter
             * @description Standard deviation of a fret about its place by the tool; left out, it is integrated over what tools do.
             */
            tooling_scatter?: (number | string) | null;
            /**
             * Frets
             * @description Fret of every reading, in any order, repeats welcome; left out: 1, 2, 3, ...
             */
            frets?: number[] | null;
            /**
             * From Nut
             * @description Distances from the nut (or zero fret) to the centre of each fret, all from the same end in one go.
             */
            from_nut?: (number | string)[] | null;
            /**
             * Fret To Fret
             * @description Instead: distances from each of `frets` to the one before it in the list, the first from the nut.
             */
            fret_to_fret?: (number | string)[] | null;
            /**
             * Readings
             * @description Instead: distances between any two frets, for a caliper that cannot reach.
             */
            readings?: components["schemas"]["ReadingIn"][] | null;
            /**
             * Origin
             * @description What fret number 0 is: the nut's front edge, or a zero fret, which the tool has set like the others.
             * @default nut
             * @enum {string}
             */
            origin?: "nut" | "zero_fret";
            /**
             * Nut Offset
             * @description Shift of the nut from the pattern's zero line, positive away from fret 1: "free" (default; normal with a
             *     standard deviation of 0.3 mm), "none", or a known length.
             * @default free
             * @example free
             */
            nut_offset?: ("free" | "none") | number | string;
            /**
             * Slot Width
             * @description Width of the slots or crowns between their edges, for readings taken at an edge.
             */
            slot_width?: (number | string) | null;
            /**
             * Nut Offset Deviation
             * @description Standard deviation of a free nut offset before anything is measured; 0.3 mm if left out.
             */
            nut_offset_deviation?: (number | string) | null;
            /**
             * Candidates
             * @description Rules to compare; left out: "equal" and "eighteenth" with a prior of 0.45 each, any divisor with 0.10.
             */
            candidates?: components["schemas"]["CandidateIn"][] | null;
            /**
             * Threshold
             * @description Probability that makes a rule established.
             * @default 0.95
             */
            threshold?: number;
            /**
             * Coverage
             * @description Probability that a stated interval holds.
             * @default 0.95
             */
            coverage?: number;
            /**
             * Significance
             * @description A rule whose residuals are less likely than this explains nothing.
             * @default 0.001
             */
            significance?: number;
            /**
             * Misreading Probability
             * @description Probability that one of a board's readings is a blunder; 0 takes every reading at its word.
             * @default 0.02
             */
            misreading_probability?: number;
        };
        /**
         * IdentificationOut
         * @description What a board's readings say about its spacing rule and scale.
         */
        IdentificationOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Verdict
             * @description "established": one rule is; "undecided": the readings cannot tell; "none": no rule explains them.
             * @enum {string}
             */
            verdict: "established" | "undecided" | "none";
            /**
             * Statement
             * @description One sentence for a label or a work order.
             */
            statement: string;
            /** @description The established rule. */
            rule: components["schemas"]["RuleOut"] | null;
            /**
             * Family
             * @description The established rule, and any others compared whose frets lie in the same places here.
             */
            family: components["schemas"]["RuleOut"][];
            /**
             * Probability
             * @description Probability of the leading rule, with its family. [-]
             */
            probability: number;
            /** @description Length that the rule was applied to; null unless a rule is established. [unit] */
            layout_scale: components["schemas"]["Estimate"] | null;
            /** @description Twice nut to octave fret, what every other part must agree with; null where it cannot be told. [unit] */
            true_scale: components["schemas"]["Estimate"] | null;
            /** @description From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit] */
            nut_offset: components["schemas"]["Estimate"] | null;
            /** @description The least-squares divisor, whatever the verdict; null where the readings do not determine it. [-] */
            divisor: components["schemas"]["Estimate"] | null;
            /**
             * Candidates
             * @description Every rule compared, the most probable first.
             */
            candidates: components["schemas"]["CandidateOut"][];
            /**
             * Suspect Readings
             * @description Readings set aside as blunders.
             */
            suspect_readings: components["schemas"]["SuspectOut"][];
            /** @description What to measure next, where the rule is undecided. */
            next_reading: components["schemas"]["NextReading"] | null;
            /**
             * Coverage
             * @description Probability that a stated interval holds. [-]
             */
            coverage: number;
            /**
             * Notes
             * @description Cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * IntervalOut
         * @description From one limit to another.
         */
        IntervalOut: {
            /**
             * Lower
             * @description The lower limit. [unit]
             */
            lower: number;
            /**
             * Upper
             * @description The upper limit. [unit]
             */
            upper: number;
        };
        /**
         * IntonationIn
         * @description How far out of tune is every note of these strings on this board?
         */
        IntonationIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Scale
             * @description The scale, a number in `unit` or a text with its own unit; `scale_basis` says which scale it is.
             * @example 24 3/4 in
             */
            scale: number | string;
            /**
             * Rule
             * @description The spacing rule of the board.
             */
            rule: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"];
            /**
             * @description How high the strings lie.
             * @example {
             *       "nut": "1 mm",
             *       "saddle_above_nut": "4 mm"
             *     }
             */
            heights: components["schemas"]["HeightsIn"];
            /**
             * Frets
             * @description Number of frets of the board, 1 to 60.
             * @default 12
             * @example 12
             */
            frets?: number;
            /**
             * Scale Basis
             * @description Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret.
             * @default layout
             * @enum {string}
             */
            scale_basis?: "layout" | "true";
            /**
             * Tuning
             * @description Open pitches by the name of a common tuning, for strings that give no `pitch` of their own; as many strings as it has pitches, in this order: six_string_standard: E4 B3 G3 D3 A2 E2; six_string_dropped_d: E4 B3 G3 D3 A2 D2; seven_string_standard: E4 B3 G3 D3 A2 E2 B1; twelve_string_standard: E4 E4 B3 B3 G4 G3 D4 D3 A3 A2 E3 E2; baritone_six_string: B3 F#3 D3 A2 E2 B1; bass_four_string: G2 D2 A1 E1; bass_five_string: G2 D2 A1 E1 B0; bass_six_string: C3 G2 D2 A1 E1 B0; ukulele_high_g: A4 E4 C4 G4; ukulele_low_g: A4 E4 C4 G3; ukulele_baritone: E4 B3 G3 D3; mandolin: E5 A4 D4 G3; mandolin_paired: E5 E5 A4 A4 D4 D4 G3 G3; octave_mandolin: E4 A3 D3 G2; banjo_five_string: D4 B3 G3 D3 G4; banjo_tenor: A4 D4 G3 C3; banjo_plectrum: D4 B3 G3 C3.
             * @example six_string_standard
             */
            tuning?: ("six_string_standard" | "six_string_dropped_d" | "seven_string_standard" | "twelve_string_standard" | "baritone_six_string" | "bass_four_string" | "bass_five_string" | "bass_six_string" | "ukulele_high_g" | "ukulele_low_g" | "ukulele_baritone" | "mandolin" | "mandolin_paired" | "octave_mandolin" | "banjo_five_string" | "banjo_tenor" | "banjo_plectrum") | null;
            /**
             * Finger Behind Fret
             * @description How far behind the fret the finger presses the string down. [unit]
             * @default 0
             * @example 0
             */
            finger_behind_fret?: number | string;
            /**
             * Fret Height
             * @description Height of the frets above the board, where the finger presses the string down to it; left out, the string goes
             *     straight on behind the fret. [unit]
             * @example 1.1 mm
             */
            fret_height?: (number | string) | null;
            /** @description How far the fret tops leave the straight line; left out, they lie on it. */
            relief?: components["schemas"]["ReliefIn"] | null;
            /**
             * Sliding Length
             * @description Length of string beyond nut and saddle, to post and tail, that slides over them and stretches too. [unit]
             * @default 0
             * @example 120 mm
             */
            sliding_length?: number | string;
            /**
             * Target
             * @description Temperament that the board should sound in, each string against its own open note: equal steps, or listed cents,
             *     one for each fret; left out, the equal temperament nearest to the rule.
             */
            target?: ("equal" | components["schemas"]["EqualIn"] | components["schemas"]["ListedIn"]) | null;
            /**
             * Boundary Factor
             * @description Ends of the speaking length that are clamped: 0 none, 1 the fret, 2 both; measured 1.1 +/- 0.2.
             * @default 1
             */
            boundary_factor?: number;
            /**
             * Stiffness
             * @description What the stiffness of a fretted note follows: "position" (B0 X0/X_n, as in the published tables) or
             *     "length_and_tension" (its speaking length and the tension of the stretched string).
             * @default position
             * @enum {string}
             */
            stiffness?: "position" | "length_and_tension";
            /**
             * Strings
             * @description The strings, 1 to 24, each with its setbacks.
             * @example [
             *       {
             *         "R": 23.6,
             *         "diameter": "0.712 mm",
             *         "pitch": "E4",
             *         "saddle_setback": "2 mm",
             *         "unit_mass": 0.374
             *       }
             *     ]
             */
            strings: components["schemas"]["PlacedStringIn"][];
        };
        /**
         * IntonationOut
         * @description How far out of tune a strung board is.
         */
        IntonationOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /** @description Spacing rule of the board. */
            rule: components["schemas"]["RuleOut"];
            /**
             * Layout Scale
             * @description The length that the rule was applied to. [unit]
             */
            layout_scale: number;
            /**
             * True Scale
             * @description Twice the distance from the pattern's zero line to the octave fret; null without one. [unit]
             */
            true_scale: number | null;
            /**
             * Octave Fret
             * @description Number of the fret that stands for the octave.
             */
            octave_fret: number | null;
            /**
             * Setback From
             * @description Whose end the saddle setbacks are counted from.
             * @enum {string}
             */
            setback_from: "true_scale" | "layout_scale";
            heights: components["schemas"]["HeightsOut"];
            /** @description How far the fret tops were taken to leave the straight line; null where they lie on it. */
            relief: components["schemas"]["ReliefOut"] | null;
            /**
             * Target Cents
             * @description Pitch above the open string that every fret should give. [cent]
             */
            target_cents: number[];
            /**
             * Boundary Factor
             * @description Ends of the speaking length that were taken as clamped.
             */
            boundary_factor: number;
            /**
             * Stiffness
             * @description What the stiffness of a fretted note followed.
             * @enum {string}
             */
            stiffness: "position" | "length_and_tension";
            /**
             * Strings
             * @description The strings, in the order given.
             */
            strings: components["schemas"]["StringIntonationOut"][];
            /**
             * Notes
             * @description What the numbers of all strings rest on.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * JumpOut
         * @description A jump between two boards.
         */
        JumpOut: {
            /**
             * At
             * @description Index, from 0, of the first board after it.
             */
            at: number;
            /**
             * Earliest
             * @description Lower end of the interval of that index.
             */
            earliest: number;
            /**
             * Latest
             * @description Its upper end.
             */
            latest: number;
            /** @description How large it is. [unit] */
            size: components["schemas"]["Estimate"];
        };
        /**
         * LabelOnPageIn
         * @description One label of many.
         */
        LabelOnPageIn: {
            /**
             * @description The part; its id is the stock number that the label bears.
             *     Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together.
             */
            part: components["schemas"]["PartIn"];
            /**
             * Title
             * @description A line of your own.
             * @default
             * @example Board 7
             */
            title?: string;
            /**
             * Date
             * @description The day that the label bears.
             */
            date?: string | null;
            /**
             * Url
             * @description An address for the code to carry.
             */
            url?: string | null;
        };
        /**
         * LabelOut
         * @description A label as it was read.
         */
        LabelOut: {
            /**
             * Length
             * @description Its number, taken at its word. [unit]
             */
            length: number;
            /**
             * Unit
             * @description The unit that the label is written in.
             * @enum {string}
             */
            unit: "in" | "mm" | "cm";
            /**
             * Grain
             * @description The smallest step of numbers written like it: 0.1 in for 25.4 in, 1/4 in for 24 3/4 in. [unit]
             */
            grain: number;
            /**
             * Unit Given
             * @description Whether the label names its unit.
             */
            unit_given: boolean;
        };
        /**
         * LabelPagesIn
         * @description What labels do these parts get, on sheets of label paper?
         */
        LabelPagesIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Labels
             * @description The labels, in the order of their places.
             */
            labels: components["schemas"]["LabelOnPageIn"][];
            /**
             * Size
             * @description Size of every label: a common one by its name, or a `width` and a `height`.
             * @default 70x36mm
             */
            size?: ("40x20mm" | "50x25mm" | "57x32mm" | "62x29mm" | "70x36mm" | "100x50mm" | "2x1in" | "2.25x1.25in" | "4x2in") | components["schemas"]["LabelSizeIn"];
            /**
             * Dpi
             * @description Dots per inch of the printer; the squares of the codes are whole numbers of dots.
             * @default 300
             */
            dpi?: number;
            /**
             * Paper
             * @description The paper, upright.
             * @default A4
             * @enum {string}
             */
            paper?: "A4" | "letter";
            /**
             * Start
             * @description Place of the first label on the first page, counted along the rows from the upper left.
             * @default 1
             */
            start?: number;
            /**
             * Column Gap
             * @description Between neighbours in a row. [unit]
             * @default 0
             * @example 2.5 mm
             */
            column_gap?: number | string;
            /**
             * Row Gap
             * @description Between rows. [unit]
             * @default 0
             * @example 0 mm
             */
            row_gap?: number | string;
            /**
             * Left
             * @description From the left edge of the paper to the first column; left out, the labels are centred. [unit]
             * @example 7.2 mm
             */
            left?: (number | string) | null;
            /**
             * Top
             * @description From the upper edge of the paper to the first row; left out, the labels are centred. [unit]
             * @example 15.1 mm
             */
            top?: (number | string) | null;
        };
        /**
         * LabelPagesOut
         * @description Pages of labels; the pages themselves come as PDF.
         */
        LabelPagesOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Pages
             * @description How many pages there are.
             */
            pages: number;
            /**
             * Columns
             * @description Labels side by side on a page.
             */
            columns: number;
            /**
             * Rows
             * @description Labels one below the other on a page.
             */
            rows: number;
            /**
             * Left
             * @description From the left edge of the paper to the first column. [unit]
             */
            left: number;
            /**
             * Top
             * @description From the upper edge of the paper to the first row. [unit]
             */
            top: number;
            /**
             * Codes
             * @description What the codes carry, label by label.
             */
            codes: string[];
            /**
             * Notes
             * @description Cautions; the pages do not show them.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * LabelSizeIn
         * @description A label of a size of its own.
         */
        LabelSizeIn: {
            /**
             * Width
             * @description Its width. [unit]
             * @example 62 mm
             */
            width: number | string;
            /**
             * Height
             * @description Its height. [unit]
             * @example 29 mm
             */
            height: number | string;
        };
        /**
         * LaidOutIn
         * @description Where a tool was told to cut, as a layout.
         */
        LaidOutIn: {
            /**
             * Scale
             * @description The scale; `scale_basis` says which.
             * @example 24 3/4 in
             */
            scale: number | string;
            /**
             * Rule
             * @description The spacing rule.
             */
            rule: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"];
            /**
             * Frets
             * @description Number of slots, from fret 1 on.
             * @example 22
             */
            frets: number;
            /**
             * Scale Basis
             * @description Which length `scale` is: "layout" or "true".
             * @default layout
             * @enum {string}
             */
            scale_basis?: "layout" | "true";
        };
        /**
         * LayoutIn
         * @description Where do the frets of this board go?
         */
        LayoutIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Scale
             * @description The scale, a number in `unit` or a text with its own unit; `scale_basis` says which scale it is.
             * @example 24 3/4 in
             */
            scale: number | string;
            /**
             * Rule
             * @description The spacing rule.
             */
            rule: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"];
            /**
             * Frets
             * @description Number of frets, 1 to 60.
             * @example 22
             */
            frets: number;
            /**
             * Scale Basis
             * @description Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret.
             * @default layout
             * @enum {string}
             */
            scale_basis?: "layout" | "true";
            /**
             * Fractions
             * @description Add the nearest mark of an inch rule with this finest graduation: 1, 2, 4 ... 128.
             */
            fractions?: (1 | 2 | 4 | 8 | 16 | 32 | 64 | 128) | null;
        };
        /**
         * LayoutOut
         * @description A fret layout.
         */
        LayoutOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /** @description The spacing rule. */
            rule: components["schemas"]["RuleOut"];
            /**
             * Layout Scale
             * @description The length that the rule was applied to. [unit]
             */
            layout_scale: number;
            /**
             * True Scale
             * @description Twice the distance from the nut to the octave fret; null where there is no octave fret. [unit]
             */
            true_scale: number | null;
            /**
             * Octave Fret
             * @description Number of the fret that stands for the octave, on the board or beyond it.
             */
            octave_fret: number | null;
            /**
             * Frets
             * @description The frets, from the nut on.
             */
            frets: components["schemas"]["FretOut"][];
            /**
             * Notes
             * @description Cautions that come with a valid answer.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * ListedIn
         * @description Listed pitches: one for each fret above the open string.
         */
        ListedIn: {
            /**
             * Name
             * @constant
             */
            name: "listed";
            /**
             * Cents
             * @description Cents above the open string, one for each fret, ascending.
             * @example [
             *       100,
             *       200,
             *       300
             *     ]
             */
            cents: number[];
            /**
             * Repeat
             * @description Whether the list starts again an octave higher where it ends.
             * @default false
             */
            repeat?: boolean;
        };
        /**
         * MarginsIn
         * @description From the centre of an outer string to the edge of the board beside it, across the board.
         */
        MarginsIn: {
            /**
             * Nut Bass
             * @description At the zero line, beside the lowest string. [unit]
             * @example 3 mm
             */
            nut_bass: number | string;
            /**
             * Nut Treble
             * @description At the zero line, beside string 1. [unit]
             * @example 3 mm
             */
            nut_treble: number | string;
            /**
             * Last Fret Bass
             * @description At the last fret, beside the lowest string. [unit]
             * @example 3.5 mm
             */
            last_fret_bass: number | string;
            /**
             * Last Fret Treble
             * @description At the last fret, beside string 1. [unit]
             * @example 4 mm
             */
            last_fret_treble: number | string;
        };
        /**
         * MarkerOut
         * @description A position marker.
         */
        MarkerOut: {
            /**
             * Fret
             * @description Fret that it stands before, on the side of the nut.
             */
            fret: number;
            /** @description Its centre. */
            at: components["schemas"]["PointOut"];
        };
        /**
         * MeasuredOut
         * @description What readings alone say.
         */
        MeasuredOut: {
            /**
             * Verdict
             * @description Whether they establish a rule.
             * @enum {string}
             */
            verdict: "established" | "undecided" | "none";
            /** @description The established rule. */
            rule: components["schemas"]["RuleOut"] | null;
            /** @description True scale; null where it cannot be told. [unit] */
            true_scale: components["schemas"]["Estimate"] | null;
            /**
             * Statement
             * @description One sentence.
             */
            statement: string;
        };
        /**
         * MeasuringCardIn
         * @description Which frets have to be read with this instrument to tell the rules apart?
         */
        MeasuringCardIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Instrument Uncertainty
             * @description Standard uncertainty of one reading (k = 1).
             * @example 0.05 mm
             */
            instrument_uncertainty: number | string;
            /**
             * Resolution
             * @description Smallest step that the instrument shows; adds its square over 12 to the variance of every reading.
             * @default 0
             * @example 0.05 mm
             */
            resolution?: number | string;
            /**
             * Tooling Scatter
             * @description Standard deviation of a fret about its place by the tool; left out, 0.05 mm is taken.
             */
            tooling_scatter?: (number | string) | null;
            /**
             * Shortest Scale
             * @description The shortest layout scale to be expected; longer boards are easier.
             * @example 24 3/4 in
             */
            shortest_scale: number | string;
            /**
             * Frets
             * @description Number of frets on the boards.
             * @default 19
             */
            frets?: number;
            /**
             * Nut Offset Deviation
             * @description Standard deviation of the nut's offset; 0 where it is known, and 0.3 mm if left out.
             */
            nut_offset_deviation?: (number | string) | null;
            /**
             * Probability
             * @description Probability with which a board's own rule is to be established.
             * @default 0.95
             */
            probability?: number;
            /**
             * Threshold
             * @description Probability that makes a rule established.
             * @default 0.95
             */
            threshold?: number;
        };
        /**
         * MeasuringCardOut
         * @description Which frets to read on boards of a kind.
         */
        MeasuringCardOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Decides
             * @description Whether the probability asked for is reached.
             */
            decides: boolean;
            /**
             * Frets
             * @description The frets to read from the nut: the smallest set that decides, or the best where none does.
             */
            frets: number[];
            /**
             * Probability
             * @description Probability that the board's own rule will be established by them, at the shortest scale. [-]
             */
            probability: number;
            /**
             * Scale
             * @description The scale for which that holds. [unit]
             */
            scale: number;
            /**
             * Steps
             * @description The best sets of two, three and more frets, up to the one that decides.
             */
            steps: components["schemas"]["StepOut"][];
            /**
             * Uncertainty Needed
             * @description Standard uncertainty of an instrument that would decide with these frets; null where these do, or none would.
             */
            uncertainty_needed: number | null;
            /**
             * Statement
             * @description What to do, in a sentence.
             */
            statement: string;
            /**
             * Notes
             * @description Cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * MendedReadingOut
         * @description One reading and what the moves leave of it.
         */
        MendedReadingOut: {
            /**
             * Fret
             * @description Number of the fret; 0 is the open string.
             */
            fret: number;
            /**
             * Cents
             * @description As it was read. [cent]
             */
            cents: number;
            /**
             * Remaining
             * @description What the moves of the answer leave of it. [cent]
             */
            remaining: number;
        };
        /**
         * NextReading
         * @description The reading that is expected to tell the leading rules apart best.
         */
        NextReading: {
            /**
             * Fret
             * @description Fret to measure to, from the nut; one that was read already means a repeat.
             */
            fret: number;
            /**
             * Expected Probability
             * @description Probability that the family leading after that reading will have, on average. [-]
             */
            expected_probability: number;
            /**
             * Chance To Decide
             * @description Probability that it will then be above the threshold. [-]
             */
            chance_to_decide: number;
        };
        /**
         * NominalIn
         * @description What can this label mean?
         */
        NominalIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Label
             * @description The label as it is written: "24 3/4 in", "25.4 in", "628 mm". A bare number is inches or millimetres, whichever
             *     it fits.
             * @example 24 3/4 in
             */
            label: string | number;
            /**
             * @description What was measured on the board, fret 12 at least.
             * @example {
             *       "frets": [
             *         12
             *       ],
             *       "from_nut": [
             *         "12.285 in"
             *       ],
             *       "instrument_uncertainty": "0.05 mm"
             *     }
             */
            readings?: components["schemas"]["ReadingsIn"] | null;
            /**
             * Setback
             * @description Setback that a string length includes; 2.5 mm if left out.
             * @default 2.5
             * @example 0.5 mm
             */
            setback?: number | string;
            /**
             * Setback Uncertainty
             * @description Its standard uncertainty; 1 mm if left out.
             * @default 1
             * @example 0.05 mm
             */
            setback_uncertainty?: number | string;
            /**
             * Threshold
             * @description Probability that makes a rule established; a meaning survives with at least one minus it.
             * @default 0.95
             */
            threshold?: number;
            /**
             * Coverage
             * @description Probability that a stated interval holds.
             * @default 0.95
             */
            coverage?: number;
        };
        /**
         * NominalOut
         * @description What a label can mean.
         */
        NominalOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Verdict
             * @description "established": one rule is behind it; "undecided": more than one may be; "none": the readings fit no meaning.
             * @enum {string}
             */
            verdict: "established" | "undecided" | "none";
            /**
             * Statement
             * @description The sentence to print instead of the label.
             */
            statement: string;
            /** @description The label as it was read. */
            label: components["schemas"]["LabelOut"];
            /** @description The rule behind it, where one is established. */
            rule: components["schemas"]["RuleOut"] | null;
            /** @description The most probable meaning, where a rule is established. */
            meaning: components["schemas"]["WeighedMeaningOut"] | null;
            /** @description True scale by label and readings together, by the readings alone where no meaning fits. [unit] */
            true_scale: components["schemas"]["Estimate"] | null;
            /**
             * Meanings
             * @description All meanings, the most probable first.
             */
            meanings: components["schemas"]["WeighedMeaningOut"][];
            /** @description What the readings alone say. */
            measured: components["schemas"]["MeasuredOut"] | null;
            /** @description What to measure next, where the rule is undecided. */
            next_reading: components["schemas"]["ReadingToTakeOut"] | null;
            /**
             * Coverage
             * @description Probability that the interval of the true scale holds. [-]
             */
            coverage: number;
            /**
             * Notes
             * @description Cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * Note
         * @description A caution that comes with a valid answer.
         */
        Note: {
            /**
             * Slug
             * @description A short name that stays the same, for programs.
             */
            slug: string;
            /**
             * Text
             * @description One sentence, for people.
             */
            text: string;
        };
        /**
         * OptimiseFor
         * @description Which frets the setbacks are best for.
         */
        OptimiseFor: {
            /**
             * Frets
             * @description Numbers of the frets, each once.
             * @example [
             *       1,
             *       2,
             *       3,
             *       4,
             *       5,
             *       7,
             *       9,
             *       12
             *     ]
             */
            frets: number[];
            /**
             * Weights
             * @description How much the squared error of each counts; left out, all alike.
             */
            weights?: number[] | null;
        };
        /**
         * OutlierReadingOut
         * @description A reading that the others contradict.
         */
        OutlierReadingOut: {
            /**
             * Reading
             * @description Its number, from 1 in the order given.
             */
            reading: number;
            /**
             * Stretch
             * @description Its stretch. [unit]
             */
            stretch: number;
            /**
             * Frequency Hz
             * @description Its frequency. [Hz]
             */
            frequency_hz: number;
            /**
             * Deviation Hz
             * @description Reading minus what the others predict. [Hz]
             */
            deviation_hz: number;
            /**
             * Probability
             * @description How probable so large a deviation among so many readings is by chance.
             */
            probability: number;
        };
        /**
         * OutlineIn
         * @description The board as it is drawn.
         */
        OutlineIn: {
            /**
             * Strings
             * @description Number of strings.
             * @example 6
             */
            strings: number;
            /** @description Widths of the board at the zero line and at the last fret. */
            widths: components["schemas"]["WidthsIn"];
            /**
             * Margins
             * @description From the centre of an outer string to the edge beside it: one length, or four. [unit]
             * @example 3 mm
             */
            margins: (number | string) | components["schemas"]["MarginsIn"];
        };
        /**
         * PageIn
         * @description A page of a size of its own.
         */
        PageIn: {
            /**
             * Width
             * @description Along the board. [unit]
             * @example 420 mm
             */
            width: number | string;
            /**
             * Height
             * @description Across the board. [unit]
             * @example 297 mm
             */
            height: number | string;
        };
        /**
         * PairOut
         * @description Two parts along one string line.
         */
        PairOut: {
            /**
             * First
             * @description The part that carries the frets; of two such, or of none, the one named first.
             */
            first: string;
            /**
             * Second
             * @description The other part.
             */
            second: string;
            /**
             * Side
             * @description Along which string line.
             * @enum {string}
             */
            side: "whole" | "bass" | "treble";
            /**
             * Decision
             * @description "together": they belong together; "apart": they do not; "undecided": can't be decided with this uncertainty.
             * @enum {string}
             */
            decision: "together" | "apart" | "undecided";
            /** @description True scale of the second minus that of the first; null where one cannot be told. [unit] */
            mismatch: components["schemas"]["Estimate"] | null;
            /**
             * @description Where the saddle line falls against the end of the true scale of the part with the frets, placed from its datum;
             *     positive too far from the nut. Of two boards: the first one's saddle line under the second. [unit]
             */
            saddle_mismatch: components["schemas"]["Estimate"] | null;
            /**
             * Conformance Probability
             * @description Probability that the true scales differ by no more than the tolerance. [-]
             */
            conformance_probability: number | null;
            /**
             * Tolerance
             * @description How far the true scales may differ. [unit]
             */
            tolerance: number;
            /**
             * Guard Band
             * @description A mismatch has to lie so far inside or outside the tolerance to be decided. [unit]
             */
            guard_band: number | null;
            /**
             * Cents
             * @description What the saddle mismatch does at frets 5, 12 and the last; empty where no part carries frets.
             */
            cents: components["schemas"]["CentsAtFretOut"][];
            /** @description Whether the saddle's travel takes it up; null where no part says how far its saddle moves. */
            absorption: components["schemas"]["AbsorptionOut"] | null;
            /** @description What to measure where it cannot be decided. */
            deciding: components["schemas"]["DecidingReadingsOut"] | null;
        };
        /**
         * PartIn
         * @description A part: one or more of `true_scale`, `layout_scale` with `rule`, `label` and `readings` define it.
         *
         *     What was measured stands before what is stated, and that before a label; two definitions that disagree are refused
         *     and never averaged.
         */
        PartIn: {
            /**
             * Id
             * @description Your name for it, which comes back in the answer.
             * @example board
             */
            id: string;
            /**
             * Kind
             * @description What it is: "board", "neck_blank", "bridge" or "saddle_template"; the first two carry frets.
             * @enum {string}
             */
            kind: "board" | "neck_blank" | "bridge" | "saddle_template";
            /**
             * True Scale
             * @description Stated true scale; of a fan board {"bass", "treble"}.
             */
            true_scale?: ((number | string) | components["schemas"]["FanScaleIn"]) | null;
            /**
             * Layout Scale
             * @description Stated layout scale; with `rule`.
             */
            layout_scale?: (number | string) | null;
            /**
             * Square Fret
             * @description The fret of a fan board that stays square to its centre line, 0 for the nut.
             */
            square_fret?: number | null;
            /**
             * Rule
             * @description Stated spacing rule.
             */
            rule?: ("equal" | "eighteenth") | components["schemas"]["EqualIn"] | components["schemas"]["EighteenthIn"] | components["schemas"]["DivisorIn"] | components["schemas"]["ListedIn"] | null;
            /**
             * Label
             * @description Its label, as it is written.
             */
            label?: (string | number) | null;
            /** @description What was measured on it. */
            readings?: components["schemas"]["ReadingsIn"] | null;
            /**
             * Tolerance
             * @description How far its true scale may be from the scale that is stated (limits, plus and minus); left out, that is taken at
             *     its word.
             * @example 0.2 mm
             */
            tolerance?: (number | string) | null;
            /**
             * Made To
             * @description What its `true_scale` or label ends at: "true_scale", or "string_length" with its `setback` in it.
             * @default true_scale
             * @enum {string}
             */
            made_to?: "true_scale" | "string_length";
            /**
             * Setback
             * @description Setback that is in its string length, positive away from the nut; with `"made_to": "string_length"`, or with a
             *     label alone, which may name one.
             */
            setback?: (number | string) | null;
            /**
             * Datum
             * @description What it is placed from when it is put on: the nut, or a fret. Of boards only a replacement is put on.
             * @default nut
             * @enum {string}
             */
            datum?: "nut" | "fret";
            /**
             * Datum Fret
             * @description The fret it is placed from, with `"datum": "fret"`.
             */
            datum_fret?: number | null;
            /**
             * Frets
             * @description Number of frets of a board or a neck blank.
             */
            frets?: number | null;
            /**
             * Body Joint Fret
             * @description Fret at which the neck meets the body; for boards of which one replaces the other.
             */
            body_joint_fret?: number | null;
            /** @description How far its saddle can be moved. */
            saddle_travel?: components["schemas"]["scalewright__wire__parts__TravelIn"] | null;
        };
        /**
         * PartScaleOut
         * @description What is known of one part along one string line.
         */
        PartScaleOut: {
            /**
             * Id
             * @description Your name for it.
             */
            id: string;
            /**
             * Kind
             * @description What it is.
             * @enum {string}
             */
            kind: "board" | "neck_blank" | "bridge" | "saddle_template";
            /**
             * Side
             * @description Along which string line: "whole", or "bass" and "treble" of a fan board.
             * @enum {string}
             */
            side: "whole" | "bass" | "treble";
            /**
             * Source
             * @description What its true scale is known from: "readings", "definition" or "label".
             * @enum {string}
             */
            source: "readings" | "definition" | "label";
            /** @description Its true scale; null where it cannot be told. [unit] */
            true_scale: components["schemas"]["Estimate"] | null;
            /** @description Its likeliest spacing rule, where that is known. */
            rule: components["schemas"]["RuleOut"] | null;
            /**
             * Verdict
             * @description Whether its readings establish the rule; null without readings.
             */
            verdict: ("established" | "undecided" | "none") | null;
            /**
             * Suspect Readings
             * @description Readings set aside as blunders.
             */
            suspect_readings: components["schemas"]["SuspectOut"][];
            /**
             * Explanation
             * @description Where the figure comes from.
             */
            explanation: string;
        };
        /**
         * PartialFretIn
         * @description A fret of the rule that is cut short, or an extra fret at a pitch of its own.
         */
        PartialFretIn: {
            /**
             * Fret
             * @description Number of the fret that is cut short.
             */
            fret?: number | null;
            /**
             * Cents
             * @description Instead: pitch of an extra fret above the open string, placed as a listed pitch is. [cent]
             */
            cents?: number | null;
            /**
             * First String
             * @description The string nearest to string 1 that it crosses.
             * @default 1
             * @example 1
             */
            first_string?: number;
            /**
             * Last String
             * @description The string farthest from string 1 that it crosses; left out, the lowest.
             * @example 3
             */
            last_string?: number | null;
            /**
             * Name
             * @description What an extra fret is called; left out, its cents.
             * @default
             * @example 6 1/2
             */
            name?: string;
        };
        /**
         * PlacedSetOut
         * @description What one string set wants, and what it gets from the best placement.
         */
        PlacedSetOut: {
            /**
             * Name
             * @description Name of the set; "strings" is the one asked for first.
             */
            name: string;
            /**
             * Least
             * @description Least saddle setback that one of its strings wants. [unit]
             */
            least: number;
            /**
             * Most
             * @description Largest saddle setback that one of its strings wants. [unit]
             */
            most: number;
            /**
             * All Reached
             * @description Whether every string gets its best.
             */
            all_reached: boolean;
            /**
             * Rms Cents
             * @description Root mean square of what remains, over all strings and the frets that count. [cent]
             */
            rms_cents: number;
            /**
             * Strings
             * @description Where every string breaks with the bridge placed so.
             */
            strings: components["schemas"]["BreakPointOut"][];
        };
        /**
         * PlacedStringIn
         * @description One string, and where it breaks over saddle and nut.
         */
        PlacedStringIn: {
            /**
             * Pitch
             * @description Open pitch: a name such as "E4", "F#3", "Bb2" (A4 = 440 Hz), or a number in hertz; needed unless `tuning`
             *     names it.
             * @example E4
             */
            pitch?: (string | number) | null;
            /**
             * Diameter
             * @description Outer diameter. [unit]
             * @example 0.712
             */
            diameter?: (number | string) | null;
            /**
             * Unit Mass
             * @description Mass per length, g/m (the same number as mg/mm); left out, it follows from `tension` or from the materials.
             */
            unit_mass?: number | null;
            /**
             * Tension
             * @description Tension at pitch, N; instead of `unit_mass`.
             */
            tension?: number | null;
            /**
             * R
             * @description Relative change of frequency with length in a stretch test, (L/f) df/dL.
             */
            R?: number | null;
            /**
             * Kappa
             * @description Relative change of tension with length, 2 R + 1; instead of `R`.
             */
            kappa?: number | null;
            /**
             * Core Material
             * @description What the core, or the whole of a plain string, is made of; needed where `R` and `kappa` are not known.
             * @example steel
             */
            core_material?: ("steel" | "nylon" | "fluorocarbon") | null;
            /**
             * Core Diameter
             * @description Diameter of the core, of a hexagonal one across the flats; left out, the string is taken as plain. [unit]
             * @example 0.010 in
             */
            core_diameter?: (number | string) | null;
            /**
             * Core Shape
             * @description Section of the core: a round or a hexagonal wire, or a bundle of filaments, which hardly resists bending.
             * @default round
             * @enum {string}
             */
            core_shape?: "round" | "hexagonal" | "multifilament";
            /**
             * Wraps
             * @description Windings, from the core outwards.
             * @default []
             */
            wraps?: components["schemas"]["WrapIn"][];
            /**
             * B0
             * @description Stiffness of the open string where it was measured, from its partials for instance.
             */
            B0?: number | null;
            /**
             * Saddle Setback
             * @description From the end of the true scale to the break point on the saddle, positive away from the nut. [unit]
             * @default 0
             * @example 2 mm
             */
            saddle_setback?: number | string;
            /**
             * Nut Setback
             * @description From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]
             * @default 0
             * @example -0.4 mm
             */
            nut_setback?: number | string;
        };
        /**
         * PlacementOut
         * @description Where a bridge has to be glued for several string sets.
         */
        PlacementOut: {
            /**
             * Reach
             * @description How far along the strings a break point can be moved on the bridge. [unit]
             */
            reach: number;
            /**
             * Needed Reach
             * @description Reach that would serve all the strings of all the sets. [unit]
             */
            needed_reach: number;
            /**
             * All Reached
             * @description Whether one placement serves them all.
             */
            all_reached: boolean;
            /**
             * Least
             * @description Setback of the front end of the reach with the bridge placed best. [unit]
             */
            least: number;
            /**
             * Most
             * @description Setback of its back end. [unit]
             */
            most: number;
            /**
             * Least From Nut
             * @description From the pattern's zero line to the front end of the reach. [unit]
             */
            least_from_nut: number;
            /**
             * Most From Nut
             * @description From the pattern's zero line to its back end. [unit]
             */
            most_from_nut: number;
            /**
             * Earliest
             * @description Least setback of the front end that still serves all; equal to `latest` where none does. [unit]
             */
            earliest: number;
            /**
             * Latest
             * @description Largest setback of the front end that still serves all. [unit]
             */
            latest: number;
            /**
             * Sets
             * @description The sets, the one asked for first.
             */
            sets: components["schemas"]["PlacedSetOut"][];
        };
        /**
         * PointOut
         * @description A place on the board.
         */
        PointOut: {
            /**
             * X
             * @description Along the centre line, from the zero line of the pattern towards the bridge. [unit]
             */
            x: number;
            /**
             * Y
             * @description Across, positive to the left as one looks from the nut to the bridge. [unit]
             */
            y: number;
        };
        /**
         * PreferenceOut
         * @description Which frets the setbacks are best for.
         */
        PreferenceOut: {
            /**
             * Frets
             * @description Numbers of the frets.
             */
            frets: number[];
            /**
             * Weights
             * @description How much the squared error of each counted.
             */
            weights: number[];
        };
        /**
         * PrintedLabelIn
         * @description What label does this part get?
         */
        PrintedLabelIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * @description The part; its id is the stock number that the label bears.
             *     Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together.
             */
            part: components["schemas"]["PartIn"];
            /**
             * Size
             * @description Size of the label: a common one by its name, or a `width` and a `height`.
             * @default 62x29mm
             */
            size?: ("40x20mm" | "50x25mm" | "57x32mm" | "62x29mm" | "70x36mm" | "100x50mm" | "2x1in" | "2.25x1.25in" | "4x2in") | components["schemas"]["LabelSizeIn"];
            /**
             * Dpi
             * @description Dots per inch of the printer and of a PNG; the squares of the code are whole numbers of dots.
             * @default 300
             */
            dpi?: number;
            /**
             * Title
             * @description A line of your own.
             * @default
             * @example Board 7
             */
            title?: string;
            /**
             * Date
             * @description The day that the label bears; the service has no clock of its own.
             */
            date?: string | null;
            /**
             * Url
             * @description An address for the code to carry, instead of the text that /v1/label/read takes.
             */
            url?: string | null;
        };
        /**
         * PrintedLabelOut
         * @description A label as it is printed; the drawing itself comes as SVG, PNG or PDF.
         */
        PrintedLabelOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Code
             * @description What its code carries.
             */
            code: string;
            /**
             * Lines
             * @description Its letters, line by line, the true scale first.
             */
            lines: string[];
            /**
             * Width
             * @description Its width. [unit]
             */
            width: number;
            /**
             * Height
             * @description Its height. [unit]
             */
            height: number;
            /**
             * Module
             * @description Side of one square of the code. [unit]
             */
            module: number;
            /**
             * Language
             * @description Language of its letters, by its tag.
             */
            language: string;
            /**
             * Language Known
             * @description False where languages were asked for and none of them is known; it is in English then.
             */
            language_known: boolean;
            /**
             * Notes
             * @description Cautions, in English; a drawing does not show them.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * Problem
         * @description Why a request was refused (RFC 9457).
         */
        Problem: {
            /**
             * Type
             * @description What kind of problem, as a relative URI that stays the same; it names a page of this service.
             */
            type: string;
            /**
             * Title
             * @description The kind of problem in a few words.
             */
            title: string;
            /**
             * Status
             * @description The HTTP status.
             */
            status: number;
            /**
             * Detail
             * @description What is wrong with this request and what to change.
             */
            detail: string;
            /**
             * Instance
             * @description This occurrence, `urn:request:` and the request id that the logs carry too.
             */
            instance: string;
            /**
             * Errors
             * @description What to change in the request, place by place, where places can be named.
             * @default []
             */
            errors?: components["schemas"]["Fault"][];
        } & {
            [key: string]: unknown;
        };
        /**
         * ProblemKind
         * @description A kind of problem.
         */
        ProblemKind: {
            /**
             * Type
             * @description What problem documents carry as their `type`.
             */
            type: string;
            /**
             * Title
             * @description The kind in a few words.
             */
            title: string;
            /**
             * Status
             * @description The HTTP status that goes with it.
             */
            status: number;
            /**
             * About
             * @description What it means and what to do.
             */
            about: string;
        };
        /**
         * ProcessIn
         * @description How far the true scales of parts like this are from the claimed one.
         */
        ProcessIn: {
            /**
             * Mean Deviation
             * @description Mean of made minus claimed true scale.
             * @default 0
             * @example 0.5 mm
             */
            mean_deviation?: number | string;
            /**
             * Standard Deviation
             * @description Standard deviation of what is made.
             * @example 0.2 mm
             */
            standard_deviation: number | string;
        };
        /**
         * ReadNextOut
         * @description The reading that would tell most about a string.
         */
        ReadNextOut: {
            /**
             * String
             * @description Number of the string.
             */
            string: number;
            /**
             * Fret
             * @description Number of the fret; 0 is the open string.
             */
            fret: number;
            /**
             * Saddle Uncertainty
             * @description Standard uncertainty of the saddle move after it; null where it still can't be told. [unit]
             */
            saddle_uncertainty: number | null;
            /**
             * Nut Uncertainty
             * @description Standard uncertainty of the nut move after it; null where it still can't be told. [unit]
             */
            nut_uncertainty: number | null;
        };
        /**
         * ReadingIn
         * @description One distance between two frets.
         */
        ReadingIn: {
            /**
             * From
             * @description Fret that the distance starts from, 0 for the origin.
             * @default 0
             */
            from?: number;
            /**
             * To
             * @description Fret that it ends at.
             */
            to: number;
            /**
             * Distance
             * @description The distance.
             * @example 322.6 mm
             */
            distance: number | string;
            /**
             * Uncertainty
             * @description Its own standard uncertainty (k = 1), where it differs from the instrument's.
             */
            uncertainty?: (number | string) | null;
            /**
             * Point
             * @description Where on slots or crowns it was taken: "centre", "near_edge" (towards the nut) or "far_edge", both ends alike.
             * @default centre
             * @enum {string}
             */
            point?: "centre" | "near_edge" | "far_edge";
        };
        /**
         * ReadingOnOut
         * @description A reading to take on one of the parts.
         */
        ReadingOnOut: {
            /**
             * Part
             * @description Which part.
             */
            part: string;
            /**
             * Fret
             * @description Fret to measure to, from the nut.
             */
            fret: number;
            /**
             * Uncertainty
             * @description Standard uncertainty that it should have. [unit]
             */
            uncertainty: number;
        };
        /**
         * ReadingToTakeOut
         * @description A reading that would tell more.
         */
        ReadingToTakeOut: {
            /**
             * Fret
             * @description Fret to measure to, from the nut.
             */
            fret: number;
            /**
             * Uncertainty
             * @description Standard uncertainty it should have; null for any good instrument. [unit]
             */
            uncertainty: number | null;
            /**
             * Reason
             * @description What it would tell.
             */
            reason: string;
        };
        /**
         * ReadingsIn
         * @description What was measured on a part, as in an identification: say `from_nut`, `fret_to_fret` or `readings`, once.
         */
        ReadingsIn: {
            /**
             * Instrument Uncertainty
             * @description Standard uncertainty of one reading (k = 1). A caliper read with care: about 0.05 mm.
             */
            instrument_uncertainty?: (number | string) | null;
            /**
             * Resolution
             * @description Smallest step that the instrument shows; adds its square over 12 to the variance of every reading.
             * @default 0
             * @example 0.05 mm
             */
            resolution?: number | string;
            /**
             * Scale Error
             * @description Relative standard uncertainty that all readings of the instrument share; 0.001 is 1 mm in a metre.
             * @default 0
             */
            scale_error?: number;
            /**
             * Tooling Scatter
             * @description Standard deviation of a fret about its place by the tool; left out, it is integrated over what tools do.
             */
            tooling_scatter?: (number | string) | null;
            /**
             * Frets
             * @description Fret of every reading; left out: 1, 2, 3, ...
             */
            frets?: number[] | null;
            /**
             * From Nut
             * @description Distances from the nut (or zero fret) to the centre of each fret.
             */
            from_nut?: (number | string)[] | null;
            /**
             * Fret To Fret
             * @description Instead: distances from each of `frets` to the one before it in the list, the first from the nut.
             */
            fret_to_fret?: (number | string)[] | null;
            /**
             * Readings
             * @description Instead: distances between any two frets.
             */
            readings?: components["schemas"]["ReadingIn"][] | null;
            /**
             * Origin
             * @description What fret number 0 is: the nut's front edge, or a zero fret, which the tool has set like the others.
             * @default nut
             * @enum {string}
             */
            origin?: "nut" | "zero_fret";
            /**
             * Nut Offset
             * @description Shift of the nut from the pattern's zero line: "free" (default), "none", or a known length.
             * @default free
             * @example free
             */
            nut_offset?: ("free" | "none") | number | string;
            /**
             * Slot Width
             * @description Width of the slots or crowns between their edges, for readings taken at an edge.
             */
            slot_width?: (number | string) | null;
        };
        /**
         * ReliefIn
         * @description How far the fret tops leave the straight line.
         */
        ReliefIn: {
            /**
             * Depth
             * @description Gap under a straightedge from fret 1 to the last fret; of a tilt, the fall at half the scale. [unit]
             * @example 0.2 mm
             */
            depth: number | string;
            /**
             * Shape
             * @description A parabola, deepest in its middle, or a straight fall that starts at the nut ("tilt").
             * @default parabola
             * @enum {string}
             */
            shape?: "parabola" | "tilt";
        };
        /**
         * ReliefOut
         * @description How far the fret tops were taken to leave the straight line.
         */
        ReliefOut: {
            /**
             * Depth
             * @description Gap under a straightedge from fret 1 to the last fret; of a tilt, the fall at half the scale. [unit]
             */
            depth: number;
            /**
             * Shape
             * @description A parabola, or a straight fall that starts at the nut.
             * @enum {string}
             */
            shape: "parabola" | "tilt";
        };
        /**
         * RemedyOut
         * @description One thing that may be done with a bridge that is glued already.
         */
        RemedyOut: {
            /**
             * Remedy
             * @description Which.
             * @enum {string}
             */
            remedy: "as_it_is" | "within_saddle" | "wider_slot" | "slanted_slot" | "new_slot" | "moved_bridge" | "moved_bridge_and_new_slot";
            /**
             * Good Enough
             * @description Whether no string keeps more than it may beyond its least.
             */
            good_enough: boolean;
            /**
             * All Reached
             * @description Whether every string breaks at its best.
             */
            all_reached: boolean;
            /**
             * Rms Cents
             * @description Root mean square of what remains, over all strings and the frets that count. [cent]
             */
            rms_cents: number;
            /**
             * Slot Width
             * @description Width of the slot. [unit]
             */
            slot_width: number;
            /**
             * Shift At First
             * @description How far the slot's centre line moves at the first string, positive away from the nut. [unit]
             */
            shift_at_first: number;
            /**
             * Shift At Last
             * @description The same at the last string. [unit]
             */
            shift_at_last: number;
            /**
             * Angle Degrees
             * @description Slant of the slot, positive where the last string is the longer. [degree]
             */
            angle_degrees: number;
            /**
             * Strings
             * @description Where every string breaks.
             */
            strings: components["schemas"]["BreakPointOut"][];
            /**
             * Advice
             * @description What it means at the bench, with the usual cautions.
             */
            advice: string;
        };
        /**
         * ReplacementOut
         * @description A new board against an old one.
         */
        ReplacementOut: {
            /**
             * Old
             * @description The board that is replaced.
             */
            old: string;
            /**
             * New
             * @description The board that replaces it.
             */
            new: string;
            /**
             * Datum Fret
             * @description Fret that both are placed from; 0 for the nut.
             */
            datum_fret: number;
            /**
             * Offsets
             * @description Fret by fret; empty where a scale or a rule cannot be told.
             */
            offsets: components["schemas"]["FretOffsetOut"][];
            /** @description The one that is farthest off. */
            largest: components["schemas"]["FretOffsetOut"] | null;
            /** @description Joint and bridge; null where no part names a joint fret. */
            body_joint: components["schemas"]["BodyJointOut"] | null;
        };
        /**
         * ResetOut
         * @description A slot that should be set again.
         */
        ResetOut: {
            /**
             * Fret
             * @description Its fret.
             */
            fret: number;
            /**
             * Move
             * @description How far to move it, positive away from the nut. [unit]
             */
            move: number;
            /**
             * Since
             * @description Index of the first board, from 0, that this rests on.
             */
            since: number;
        };
        /**
         * ReslottedNoteOut
         * @description One fretted note on both boards, each with its own best saddle.
         */
        ReslottedNoteOut: {
            /**
             * Fret
             * @description Number of the fret.
             */
            fret: number;
            /**
             * Here
             * @description Error on this board. [cent]
             */
            here: number;
            /**
             * Equal
             * @description Error on the board in equal steps. [cent]
             */
            equal: number;
            /**
             * Cost
             * @description What the spacing rule of this board adds: the first less the second. [cent]
             */
            cost: number;
        };
        /**
         * ReslottedStringOut
         * @description One string on the board in equal steps.
         */
        ReslottedStringOut: {
            /**
             * Pitch
             * @description Open pitch, as given.
             */
            pitch: string;
            /**
             * Saddle Setback
             * @description From the end of the scale to the break point, positive away from the nut. [unit]
             */
            saddle_setback: number;
            /**
             * Nut Setback
             * @description From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]
             */
            nut_setback: number;
            /**
             * Rms Cents
             * @description Root mean square of the errors that remain on the frets that count. [cent]
             */
            rms_cents: number;
            /**
             * Cents
             * @description Both boards at every fret.
             */
            cents: components["schemas"]["ReslottedNoteOut"][];
        };
        /**
         * ReslottingOut
         * @description The same board in equal steps at the same true scale.
         */
        ReslottingOut: {
            /**
             * Steps
             * @description Equal steps to the octave.
             */
            steps: number;
            /**
             * True Scale
             * @description The true scale of both. [unit]
             */
            true_scale: number;
            /**
             * Rms Cents Here
             * @description Root mean square of what remains on this board, over all strings and the frets that count. [cent]
             */
            rms_cents_here: number;
            /**
             * Rms Cents Equal
             * @description The same on the board in equal steps. [cent]
             */
            rms_cents_equal: number;
            /**
             * Strings
             * @description The strings, in the order given.
             */
            strings: components["schemas"]["ReslottedStringOut"][];
        };
        /**
         * RuleLikelihoodOut
         * @description How well one spacing rule explains what no move does.
         */
        RuleLikelihoodOut: {
            /** @description The rule. */
            rule: components["schemas"]["RuleOut"];
            /**
             * Probability
             * @description Its probability among the rules that were compared, each as likely before.
             */
            probability: number;
            /**
             * Chi Square
             * @description Weighted sum of squared residuals with the rule's own errors taken out.
             */
            chi_square: number;
            /**
             * P Value
             * @description How probable so large a chi-square is by chance; null without degrees of freedom.
             */
            p_value: number | null;
        };
        /**
         * RuleOut
         * @description A spacing rule; what the kind of rule does not have is left out.
         */
        RuleOut: {
            /**
             * Name
             * @description Which rule: equal, eighteenth, divisor or listed.
             * @enum {string}
             */
            name: "equal" | "eighteenth" | "divisor" | "listed";
            /**
             * Divisor
             * @description What the length that is left is divided by at each fret; listed pitches have none. [-]
             */
            divisor?: number | null;
            /**
             * Steps
             * @description Steps to the octave, for equal spacing.
             */
            steps?: number | null;
            /**
             * Cents
             * @description Cents above the open string, one for each fret, for listed pitches. [cent]
             */
            cents?: number[] | null;
            /**
             * Repeat
             * @description Whether the listed pitches repeat by octaves.
             */
            repeat?: boolean | null;
        };
        /**
         * RuleSummary
         * @description A spacing rule with its numbers.
         */
        RuleSummary: {
            /**
             * Name
             * @description Which rule.
             * @enum {string}
             */
            name: "equal" | "eighteenth" | "divisor" | "listed";
            /**
             * Description
             * @description What it does, in a sentence.
             */
            description: string;
            /**
             * Parameters
             * @description What the rule takes beside its name.
             */
            parameters: string[];
            /**
             * Divisor
             * @description What the length that is left is divided by at each fret, with the default parameters; null without one. [-]
             */
            divisor: number | null;
            /**
             * Step Cents
             * @description Interval of one step, with the default parameters; null without one. [cent]
             */
            step_cents: number | null;
            /**
             * Octave Fret
             * @description Fret that stands for the octave, with the default parameters; null without one.
             */
            octave_fret: number | null;
            /**
             * Octave Shortfall Cents
             * @description How far that fret stops short of an octave when the bridge stands at the end of the layout scale. [cent]
             */
            octave_shortfall_cents: number | null;
        };
        /**
         * RulesOut
         * @description The spacing rules.
         */
        RulesOut: {
            /**
             * Rules
             * @description The rules, the commonest first.
             */
            rules: components["schemas"]["RuleSummary"][];
            /**
             * Temperaments
             * @description Listed temperaments, for candidates of an identification or for listed pitches.
             */
            temperaments: components["schemas"]["TemperamentOut"][];
        };
        /**
         * SawIn
         * @description How the slots are cut; the cut list is written for it.
         */
        SawIn: {
            /**
             * Step
             * @description The smallest step that the machine or the rule can be set to; left out, nothing is rounded. [unit]
             */
            step?: (number | string) | null;
            /**
             * Origin
             * @description Where all distances start: "zero_line" of the pattern, or the "nut_end" or "far_end" of the board.
             * @default zero_line
             * @enum {string}
             */
            origin?: "zero_line" | "nut_end" | "far_end";
            /**
             * Blade
             * @description Which part of the blade is set to a distance: its "centre", or its face on the "nut_side" or "bridge_side".
             * @default centre
             * @enum {string}
             */
            blade?: "centre" | "nut_side" | "bridge_side";
        };
        /**
         * SegmentOut
         * @description A line along the board, by its ends.
         */
        SegmentOut: {
            /** @description End on the side of the nut. */
            start: components["schemas"]["PointOut"];
            /** @description End on the side of the bridge. */
            end: components["schemas"]["PointOut"];
        };
        /**
         * SheetConformityOut
         * @description Whether the part is what it claims to be.
         */
        SheetConformityOut: {
            /**
             * Decision
             * @description By guarded acceptance (JCGM 106).
             * @enum {string}
             */
            decision: "accept" | "reject";
            /**
             * Conformance
             * @description What the readings prove: "conforming", "undecided" or "nonconforming" (ISO 14253-1).
             * @enum {string}
             */
            conformance: "conforming" | "undecided" | "nonconforming";
            /** @description Measured minus claimed true scale. [unit] */
            deviation: components["schemas"]["Estimate"];
            /**
             * Tolerance
             * @description How far it may be from the claimed one. [unit]
             */
            tolerance: number;
            /**
             * Conformance Probability
             * @description Probability that the true scale lies within the tolerance. [-]
             */
            conformance_probability: number;
        };
        /**
         * SheetFretOut
         * @description Where one fret goes.
         */
        SheetFretOut: {
            /**
             * Fret
             * @description Its number.
             */
            fret: number;
            /**
             * From Nut
             * @description Distance from the nut. [unit]
             */
            from_nut: number;
            /**
             * To True End
             * @description Distance to the end of the true scale. [unit]
             */
            to_true_end: number | null;
            /**
             * Millimetres
             * @description Distance from the nut in millimetres. [mm]
             */
            millimetres: number;
            /**
             * Inches
             * @description Distance from the nut in inches. [in]
             */
            inches: number;
            /**
             * Fraction
             * @description Nearest sixty-fourth of an inch, as a rule shows it.
             */
            fraction: string;
        };
        /**
         * SheetIn
         * @description What stands on a drawing, and what paper it goes on.
         */
        SheetIn: {
            /**
             * Title
             * @description What the drawing is called.
             * @default
             * @example Parlour guitar, second try
             */
            title?: string;
            /**
             * Identifiers
             * @description Numbers of orders, parts or drawings.
             */
            identifiers?: string[] | null;
            /**
             * Date
             * @description The day that the drawing bears; the service has no clock of its own.
             */
            date?: string | null;
            /**
             * Paper
             * @description Paper of a PDF: one "long" sheet, or pages of A4, letter or a "custom" size that are glued together.
             * @default long
             * @enum {string}
             */
            paper?: "long" | "A4" | "letter" | "custom";
            /** @description Size of a page, for paper of a custom size. */
            page?: components["schemas"]["PageIn"] | null;
            /**
             * Overlap
             * @description How far pages that are glued together overlap; 15 mm if left out. [unit]
             * @default 15
             * @example 10 mm
             */
            overlap?: number | string;
            /**
             * Pixels
             * @description Width of a PNG preview.
             * @default 1600
             */
            pixels?: number;
        };
        /**
         * SheetLabelOut
         * @description What the label of the part says, and what that is.
         */
        SheetLabelOut: {
            /**
             * Text
             * @description Its letters, as they were given.
             */
            text: string;
            /**
             * Length
             * @description Its number, taken at its word. [unit]
             */
            length: number;
            /**
             * Written In
             * @description Unit that the label is written in.
             * @enum {string}
             */
            written_in: "in" | "mm" | "cm";
            /**
             * Names
             * @description Which length it is: "true_scale", "layout_scale" or "neither".
             * @enum {string}
             */
            names: "true_scale" | "layout_scale" | "neither";
            /**
             * Excess
             * @description Label minus true scale. [unit]
             */
            excess: number;
        };
        /**
         * SheetSentencesOut
         * @description Sentences of the sheet, in its language, lengths in both units.
         */
        SheetSentencesOut: {
            /**
             * Statement
             * @description Rule, layout scale and true scale in one sentence.
             */
            statement: string;
            /**
             * True Scale
             * @description The true scale with its uncertainty.
             */
            true_scale: string;
            /**
             * Layout Scale
             * @description The layout scale, or that it is not established.
             */
            layout_scale: string;
            /**
             * Rule
             * @description The spacing rule, or that it is not established.
             */
            rule: string;
            /**
             * Obtained
             * @description How the true scale is known.
             */
            obtained: string;
            /**
             * Label
             * @description What the label says and what it means.
             */
            label: string | null;
            /**
             * Conformity
             * @description Whether the part is what it claims to be.
             */
            conformity: string | null;
            /**
             * Not With
             * @description What it must not be combined with.
             */
            not_with: string[];
            /**
             * Cautions
             * @description What to mind.
             */
            cautions: string[];
        };
        /**
         * SheetSetbackOut
         * @description Where one string breaks over the saddle, the nut on the zero line.
         */
        SheetSetbackOut: {
            /**
             * String
             * @description Number of the string, 1 first.
             */
            string: number;
            /**
             * Pitch
             * @description Its open pitch.
             */
            pitch: string;
            /**
             * Saddle Setback
             * @description From the end of the true scale to the break point on the saddle, positive away from the nut. [unit]
             */
            saddle_setback: number;
            /**
             * Saddle From Nut
             * @description From the nut's front edge to the break point. [unit]
             */
            saddle_from_nut: number;
        };
        /**
         * SheetTrebleOut
         * @description The side of the highest string of a fan board.
         */
        SheetTrebleOut: {
            /** @description The true scale along it. [unit] */
            true_scale: components["schemas"]["Estimate"];
            /**
             * Layout Scale
             * @description The length that the rule was applied to there. [unit]
             */
            layout_scale: number | null;
            /**
             * Frets
             * @description Its frets; none where the rule is not known.
             */
            frets: components["schemas"]["SheetFretOut"][];
        };
        /**
         * ShopFraction
         * @description The nearest mark of an inch rule.
         */
        ShopFraction: {
            /**
             * Text
             * @description The mark, such as "1 3/8 in".
             */
            text: string;
            /**
             * Error
             * @description The mark minus the exact length, in `unit`.
             */
            error: number;
        };
        /**
         * SignatureIn
         * @description What a tool does to every board: the `signature` of a study's answer.
         */
        SignatureIn: {
            /**
             * Id
             * @description Your name for the tool.
             * @example gang saw
             */
            id: string;
            /**
             * Bias
             * @description How far each slot lies from where it was commanded, positive away from the nut.
             * @example [
             *       0.01,
             *       -0.02,
             *       0.03
             *     ]
             */
            bias: (number | string)[];
            /**
             * Within
             * @description Standard deviation of a slot against the other slots of its board.
             * @example 0.03 mm
             */
            within: number | string;
            /**
             * Between
             * @description Standard deviation of a whole board against the others.
             * @example 0.03 mm
             */
            between: number | string;
            /**
             * Boards
             * @description How many boards were studied.
             * @example 40
             */
            boards: number;
        };
        /**
         * SignatureMatchOut
         * @description How well an unknown board agrees with one tool.
         */
        SignatureMatchOut: {
            /**
             * Id
             * @description The tool.
             */
            id: string;
            /**
             * Probability
             * @description Its probability among the tools, none of them preferred. [-]
             */
            probability: number;
            /**
             * Chi Square
             * @description Squared deviations in units of their variance. [-]
             */
            chi_square: number;
            /**
             * P Value
             * @description Probability of a chi-square as large by chance if the board came from this tool. [-]
             */
            p_value: number;
        };
        /**
         * SignatureOut
         * @description What identifies a tool; a later question takes it as it stands, in the same unit.
         */
        SignatureOut: {
            /**
             * Id
             * @description Your name for the tool.
             */
            id: string;
            /**
             * Bias
             * @description How far each slot lies from where it was commanded, positive away from the nut. [unit]
             */
            bias: number[];
            /**
             * Within
             * @description Standard deviation of a slot against the other slots of its board. [unit]
             */
            within: number;
            /**
             * Between
             * @description Standard deviation of a whole board against the others. [unit]
             */
            between: number;
            /**
             * Boards
             * @description How many boards were studied.
             */
            boards: number;
        };
        /**
         * SlantOut
         * @description How the saddle lines of two fan parts lie against each other.
         */
        SlantOut: {
            /**
             * First
             * @description The part that carries the frets; of two such, or of none, the one named first.
             */
            first: string;
            /**
             * Second
             * @description The other part.
             */
            second: string;
            /**
             * First Square Fret
             * @description Fret of the first that is square to its centre line; 0 for the nut.
             */
            first_square_fret: number;
            /**
             * Second Square Fret
             * @description The same of the second.
             */
            second_square_fret: number;
            /**
             * @description With the middles of the saddle lines in line: how far the bass end of the second's lies from that of the first,
             *     positive farther from the nut; the treble end lies as far off the other way. [unit]
             */
            offset: components["schemas"]["Estimate"];
            /**
             * Decision
             * @description Whether that is within the tolerance.
             * @enum {string}
             */
            decision: "together" | "apart" | "undecided";
        };
        /**
         * SlotFitOut
         * @description The best straight slot for a set of strings.
         */
        SlotFitOut: {
            /**
             * Thickness
             * @description Thickness of the saddle. [unit]
             */
            thickness: number;
            /**
             * Needed Thickness
             * @description Thickness that would let every string break at its best, in the slot that needs least. [unit]
             */
            needed_thickness: number;
            /**
             * Fits
             * @description Whether all the best break points lie on the saddle.
             */
            fits: boolean;
            /**
             * Setback At First
             * @description Setback of the slot's centre line at the first string. [unit]
             */
            setback_at_first: number;
            /**
             * Setback At Last
             * @description The same at the last string. [unit]
             */
            setback_at_last: number;
            /**
             * From Nut At First
             * @description From the pattern's zero line to the slot's centre line at the first string. [unit]
             */
            from_nut_at_first: number;
            /**
             * From Nut At Last
             * @description The same at the last string. [unit]
             */
            from_nut_at_last: number;
            /**
             * Angle Degrees
             * @description Slant against a line square to the strings, positive where the last string is the longer. [degree]
             */
            angle_degrees: number;
            /**
             * Rms Cents
             * @description Root mean square of what remains, over all strings and the frets that count. [cent]
             */
            rms_cents: number;
            /**
             * Strings
             * @description Where every string breaks.
             */
            strings: components["schemas"]["BreakPointOut"][];
        };
        /**
         * SlotStudyOut
         * @description What a tool does at one slot.
         */
        SlotStudyOut: {
            /**
             * Fret
             * @description Its fret.
             */
            fret: number;
            /**
             * Commanded
             * @description Where it should be, from the tool's zero. [unit]
             */
            commanded: number;
            /** @description How far it lies from there on average, positive away from the nut. [unit] */
            bias: components["schemas"]["Estimate"];
            /** @description The same with the tool's scale and origin taken out; null with fewer than three slots. [unit] */
            aligned_bias: components["schemas"]["Estimate"] | null;
            /**
             * Standard Deviation
             * @description Of the slot over the boards. [unit]
             */
            standard_deviation: number;
            /**
             * Expanded Uncertainty
             * @description Of a board's slot against its commanded place (k = 2), the bias included as it stands. [unit]
             */
            expanded_uncertainty: number;
            /**
             * Cp
             * @description Tolerance over six standard deviations; null without spread. [-]
             */
            cp: number | null;
            /**
             * Cpk
             * @description The same, on the side with less room. [-]
             */
            cpk: number | null;
            /**
             * Cents
             * @description What the bias does to the pitch of the note, positive sharp. [cent]
             */
            cents: number;
        };
        /**
         * SlotsIn
         * @description The slots that the frets go into.
         */
        SlotsIn: {
            /**
             * Kerf
             * @description Width of a slot, as the blade cuts it; 0.6 mm if left out. [unit]
             * @default 0.6
             * @example 0.6 mm
             */
            kerf?: number | string;
            /**
             * Blind Inset
             * @description How far a blind slot ends before the edge of the board; left out, slots go through. [unit]
             * @default 0
             * @example 34.9 mm
             */
            blind_inset?: number | string;
            /**
             * Tang Depth
             * @description Depth of the fretwire's tang; without it no depth is stated. [unit]
             */
            tang_depth?: (number | string) | null;
            /**
             * Clearance
             * @description How much deeper than the tang a slot is; it counts beside `tang_depth` alone. [unit]
             * @default 0
             * @example 34.9 mm
             */
            clearance?: number | string;
        };
        /**
         * SoundedNoteOut
         * @description How sharp one fretted note is with the open string in tune, and why.
         */
        SoundedNoteOut: {
            /**
             * Fret
             * @description Number of the fret.
             */
            fret: number;
            /**
             * Cents
             * @description The error, positive sharp: `spacing` + `stretch` + `stiffness` + `geometry`, added in this order. [cent]
             */
            cents: number;
            /**
             * Spacing
             * @description Where the fret stands, for an ideal string that breaks at the ends of the scale. [cent]
             */
            spacing: number;
            /**
             * Stretch
             * @description Tension and mass of the string, pressed down and thereby stretched. [cent]
             */
            stretch: number;
            /**
             * Stiffness
             * @description Resistance to bending, which counts more the shorter the string. [cent]
             */
            stiffness: number;
            /**
             * Geometry
             * @description Lengths: setbacks of saddle and nut, and the slope of the string. [cent]
             */
            geometry: number;
        };
        /**
         * SpacingDiagnosisOut
         * @description What the readings say of where the frets stand, beyond what moves of saddle and nut explain.
         */
        SpacingDiagnosisOut: {
            /**
             * Verdict
             * @description Whether one rule is "established"; "undecided" where the readings can't tell, "none" where no rule fits.
             * @enum {string}
             */
            verdict: "established" | "undecided" | "none";
            /**
             * Rules
             * @description The rules that were compared, the likeliest first.
             */
            rules: components["schemas"]["RuleLikelihoodOut"][];
            /**
             * Degrees Of Freedom
             * @description Readings beyond those that the moves need.
             */
            degrees_of_freedom: number;
            /**
             * Frets
             * @description Errors that all strings share, at frets read on two strings or more.
             */
            frets: components["schemas"]["FretErrorOut"][];
            /**
             * Statement
             * @description One sentence for the bench.
             */
            statement: string;
        };
        /**
         * SpecSheetIn
         * @description What does a buyer of this part have to know of its scale?
         */
        SpecSheetIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * @description The part; with `readings` what was measured, with `label` what its label says, with `frets` how many it has.
             *     Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together.
             */
            part: components["schemas"]["PartIn"];
            /** @description A string set to recommend setbacks for. */
            stringing?: components["schemas"]["StringingIn"] | null;
            /** @description The outline of the board, to draw it to scale. */
            outline?: components["schemas"]["OutlineIn"] | null;
            /**
             * Tolerance
             * @description How far true scales of parts that are put together may differ; 0.5 mm if left out.
             * @default 0.5
             * @example 0.5 mm
             */
            tolerance?: number | string;
            /**
             * Coverage
             * @description Probability that a stated interval holds.
             * @default 0.95
             */
            coverage?: number;
            /**
             * Title
             * @description What the part is called.
             * @default
             * @example Parlour guitar, second try
             */
            title?: string;
            /**
             * Identifiers
             * @description Other numbers that it goes by.
             */
            identifiers?: string[] | null;
            /**
             * Revision
             * @description Revision of the sheet.
             * @default
             * @example Board 7
             */
            revision?: string;
            /**
             * Date
             * @description The day that the sheet bears; the service has no clock of its own.
             */
            date?: string | null;
            /**
             * Paper
             * @description Paper of a PDF, upright; one sheet.
             * @default A4
             * @enum {string}
             */
            paper?: "A4" | "letter";
            /**
             * Html
             * @description Whether HTML is a page of its own or a fragment to be put into one.
             * @default page
             * @enum {string}
             */
            html?: "page" | "fragment";
        };
        /**
         * SpecSheetOut
         * @description All that a buyer of a part has to know of its scale.
         */
        SpecSheetOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Id
             * @description Your name for the part.
             */
            id: string;
            /**
             * Kind
             * @description What it is.
             * @enum {string}
             */
            kind: "board" | "neck_blank" | "bridge" | "saddle_template";
            /**
             * Source
             * @description What the true scale is known from: "readings", "definition" or "label".
             * @enum {string}
             */
            source: "readings" | "definition" | "label";
            /** @description Its spacing rule, where that is established or stated. */
            rule: components["schemas"]["RuleOut"] | null;
            /**
             * Layout Scale
             * @description The length that the rule was applied to. [unit]
             */
            layout_scale: number | null;
            /** @description Its true scale. [unit] */
            true_scale: components["schemas"]["Estimate"];
            /**
             * Tolerance
             * @description How far true scales of parts that are put together may differ. [unit]
             */
            tolerance: number;
            /**
             * Coverage
             * @description Probability that a stated interval holds. [-]
             */
            coverage: number;
            /** @description What its label says; null without one. */
            label: components["schemas"]["SheetLabelOut"] | null;
            /**
             * Frets
             * @description Its frets; none where the rule is not known.
             */
            frets: components["schemas"]["SheetFretOut"][];
            /**
             * Setbacks
             * @description Recommended setbacks, string by string.
             */
            setbacks: components["schemas"]["SheetSetbackOut"][];
            /**
             * @description The side of the highest string of a fan board, whose other figures are those of the lowest string's; null for a
             *     board of one scale.
             */
            treble: components["schemas"]["SheetTrebleOut"] | null;
            /**
             * Square Fret
             * @description The fret of a fan board that is square to its centre line, where that is stated; 0 for the nut.
             */
            square_fret: number | null;
            /** @description Whether it is what it claims to be; null unless it claims a scale and was measured. */
            conformity: components["schemas"]["SheetConformityOut"] | null;
            /** @description The same in words. */
            sentences: components["schemas"]["SheetSentencesOut"];
            /**
             * Language
             * @description Language of the sentences, by its tag.
             */
            language: string;
            /**
             * Language Known
             * @description False where languages were asked for and none of them is known; the sentences are in English then.
             */
            language_known: boolean;
        };
        /**
         * StatedPartOut
         * @description The part that a label is on, as other questions take it.
         */
        StatedPartOut: {
            /**
             * Id
             * @description Its name: the stock number.
             */
            id: string;
            /**
             * Kind
             * @description What it is.
             * @enum {string}
             */
            kind: "board" | "neck_blank" | "bridge" | "saddle_template";
            /**
             * True Scale
             * @description Its true scale; of a fan board {"bass", "treble"}. [unit]
             */
            true_scale: number | components["schemas"]["FanScaleOut"];
            /**
             * Square Fret
             * @description The fret of a fan board that is square to its centre line, where the label states it; 0 for the nut.
             */
            square_fret: number | null;
            /**
             * Layout Scale
             * @description The length that the rule was applied to, where the label states it. [unit]
             */
            layout_scale: number | null;
            /** @description Its spacing rule, where the label states it. */
            rule: components["schemas"]["RuleOut"] | null;
            /**
             * Tolerance
             * @description Half the width of a rectangular distribution that is as uncertain as the label says; null where it is taken at
             *     its word. [unit]
             */
            tolerance: number | null;
        };
        /**
         * StepOut
         * @description The best set of a given number of frets.
         */
        StepOut: {
            /**
             * Readings
             * @description How many frets.
             */
            readings: number;
            /**
             * Frets
             * @description Which, ascending.
             */
            frets: number[];
            /**
             * Probability
             * @description Probability that the board's own rule will be established by them. [-]
             */
            probability: number;
        };
        /**
         * StraightSlotIn
         * @description A straight slot that is to be cut.
         */
        StraightSlotIn: {
            /**
             * Thickness
             * @description Thickness of the saddle that stands in it. [unit]
             * @example 3 mm
             */
            thickness: number | string;
            /**
             * Spread
             * @description Distance across the bridge from the first string to the last; strings lie evenly between. [unit]
             * @example 58 mm
             */
            spread?: (number | string) | null;
            /**
             * Across
             * @description Instead of `spread`: where every string crosses the bridge, from the first one's place, ascending. [unit]
             */
            across?: (number | string)[] | null;
        };
        /**
         * StretchTestIn
         * @description What do these frequencies of a stretched string say of it?
         */
        StretchTestIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Length
             * @description Length that vibrates, before it is stretched. [unit]
             * @example 613.518 mm
             */
            length: number | string;
            /**
             * Stretch
             * @description How much longer the string was made, for each reading. [unit]
             * @example [
             *       0,
             *       0.5,
             *       1,
             *       1.5,
             *       2
             *     ]
             */
            stretch: (number | string)[];
            /**
             * Frequencies
             * @description Frequency at each stretch, Hz.
             * @example [
             *       326,
             *       331.5,
             *       337.5,
             *       345,
             *       352
             *     ]
             */
            frequencies: number[];
            /**
             * Uncertainties
             * @description Standard uncertainty of each frequency, Hz; left out, all readings count alike.
             */
            uncertainties?: number[] | null;
            /**
             * Pitch
             * @description Pitch that R is meant for, a name or hertz; left out, the one that the fitted line has before the stretch.
             * @example E4
             */
            pitch?: (string | number) | null;
            /**
             * Scatter From
             * @description How sure the answer is: by how the readings scatter about the line ("residuals"; uncertainties then count as
             *     weights only), or by the "uncertainties" as they are given.
             * @default residuals
             * @enum {string}
             */
            scatter_from?: "residuals" | "uncertainties";
            /**
             * Diameter
             * @description Diameter of what carries the tension, the core of a wound string; asks for the effective modulus. [unit]
             * @example 0.712 mm
             */
            diameter?: (number | string) | null;
            /**
             * Tension
             * @description Tension at the pitch, N; left out, it follows from `unit_mass`.
             */
            tension?: number | null;
            /**
             * Unit Mass
             * @description Mass per length, g/m (the same number as mg/mm).
             */
            unit_mass?: number | null;
            /**
             * Scale
             * @description Open length at which the string has its pitch; left out, `length`. [unit]
             * @example 650 mm
             */
            scale?: (number | string) | null;
            /**
             * Coverage
             * @description Probability that the intervals of the answer hold.
             * @default 0.95
             */
            coverage?: number;
        };
        /**
         * StretchTestOut
         * @description What a stretch test says of a string.
         */
        StretchTestOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /** @description Relative change of frequency with length, (L/f) df/dL. */
            R: components["schemas"]["Estimate"];
            /** @description Relative change of tension with length, 2 R + 1. */
            kappa: components["schemas"]["Estimate"];
            /** @description Rise of the frequency with the stretch, per millimetre whatever the unit. [Hz/mm] */
            slope_hz_per_mm: components["schemas"]["Estimate"];
            /**
             * Frequency Hz
             * @description Frequency that R was taken at. [Hz]
             */
            frequency_hz: number;
            /**
             * Tension N
             * @description Tension at that frequency; null where neither tension nor unit mass is known. [N]
             */
            tension_n: number | null;
            /** @description kappa times tension over area; null where diameter or tension is not known. [GPa] */
            effective_modulus_gpa: components["schemas"]["Estimate"] | null;
            /**
             * Residuals Hz
             * @description Reading minus fitted line, in the order given. [Hz]
             */
            residuals_hz: number[];
            /**
             * Scatter Hz
             * @description Standard deviation of a reading about the line; with uncertainties given, in terms of those. [Hz]
             */
            scatter_hz: number;
            /**
             * Chi Square
             * @description Weighted sum of squared residuals; null without uncertainties.
             */
            chi_square: number | null;
            /**
             * Degrees Of Freedom
             * @description Readings beyond the two that a line needs.
             */
            degrees_of_freedom: number;
            /**
             * P Value
             * @description How probable so large a chi-square is by chance; null without uncertainties.
             */
            p_value: number | null;
            /**
             * Outliers
             * @description Readings that the others contradict; they are in the fit, so leave them out and ask again if they were wrong.
             */
            outliers: components["schemas"]["OutlierReadingOut"][];
            /**
             * Coverage
             * @description Probability that the intervals hold.
             */
            coverage: number;
            /**
             * Notes
             * @description What the numbers rest on, and cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * StringCompensationOut
         * @description Where one string breaks over the saddle and the nut.
         */
        StringCompensationOut: {
            /**
             * Pitch
             * @description Open pitch, as given.
             */
            pitch: string;
            /**
             * Frequency Hz
             * @description Frequency of the open string. [Hz]
             */
            frequency_hz: number;
            /**
             * Unit Mass
             * @description Mass per length. [g/m]
             */
            unit_mass: number;
            /**
             * Tension N
             * @description Tension at pitch. [N]
             */
            tension_n: number;
            /**
             * Kappa
             * @description Relative change of tension with length.
             */
            kappa: number;
            /**
             * B0
             * @description Stiffness of the open string, sqrt(kappa) s / X0 with s the radius of gyration of the section that bends.
             */
            B0: number;
            /**
             * Stiffness N
             * @description E A of what carries the tension, kappa times the tension. [N]
             */
            stiffness_n: number;
            /**
             * Breaking Share
             * @description Tension over the minimum breaking load (ASTM A228); null where no standard gives the strength.
             */
            breaking_share: number | null;
            /**
             * Unit Mass From
             * @description What unit mass and tension rest on: "measured", "tension" or "material".
             * @enum {string}
             */
            unit_mass_from: "measured" | "tension" | "material";
            /**
             * Kappa From
             * @description What kappa rests on: "R", "kappa" or the "modulus" of the core's material.
             * @enum {string}
             */
            kappa_from: "R" | "kappa" | "modulus";
            /**
             * B0 From
             * @description What B0 rests on: "measured", or the section that bends: the "core", the "whole_section" or
             *     "sliding_filaments".
             * @enum {string}
             */
            B0_from: "measured" | "core" | "whole_section" | "sliding_filaments";
            /**
             * Notes
             * @description What the numbers of this string rest on, and cautions.
             */
            notes: components["schemas"]["Note"][];
            /**
             * Saddle Setback
             * @description From the end of the scale to the break point on the saddle, positive away from the nut. [unit]
             */
            saddle_setback: number;
            /**
             * Nut Setback
             * @description From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]
             */
            nut_setback: number;
            /**
             * Saddle From Nut
             * @description From the nut's front edge to the break point, parallel to the fret plane. [unit]
             */
            saddle_from_nut: number;
            /**
             * Saddle From Fret 12
             * @description From fret 12 to the break point, parallel to the fret plane; null on a board without that fret. [unit]
             */
            saddle_from_fret_12: number | null;
            /**
             * Rms Cents
             * @description Root mean square of the errors that remain on the fretted notes that count. [cent]
             */
            rms_cents: number;
            /**
             * Cents
             * @description Errors at every fret.
             */
            cents: components["schemas"]["FrettedNoteOut"][];
        };
        /**
         * StringCrossingOut
         * @description Where a fret crosses one string.
         */
        StringCrossingOut: {
            /**
             * String
             * @description Number of the string; 1 is the highest.
             */
            string: number;
            /** @description The place on the board. */
            at: components["schemas"]["PointOut"];
            /**
             * From Zero
             * @description From the zero line, along the string as `measured` says. [unit]
             */
            from_zero: number;
            /**
             * Off Own Rule
             * @description How far that is from where the rule puts the fret on this string's own scale; null for unequal rules. [unit]
             */
            off_own_rule: number | null;
            /**
             * Cents
             * @description 1200 log2 of its scale over what is left of it, for an ideal string. [cent]
             */
            cents: number;
        };
        /**
         * StringDiagnosisOut
         * @description What mends one string.
         */
        StringDiagnosisOut: {
            /**
             * String
             * @description Number of the string.
             */
            string: number;
            /**
             * Verdict
             * @description "in_tune" (the errors are what the tuner allows anyway), "move" (the moves mend them) or "undecided" (the
             *     readings can't tell which move).
             * @enum {string}
             */
            verdict: "in_tune" | "move" | "undecided";
            /** @description How far to move the saddle, positive away from the nut; null where that can't be told. [unit] */
            saddle_move: components["schemas"]["Estimate"] | null;
            /** @description How far to move the nut's front edge, positive away from fret 1; null where that can't be told. [unit] */
            nut_move: components["schemas"]["Estimate"] | null;
            /** @description How far the saddle would have to go if the nut stayed. [unit] */
            saddle_alone: components["schemas"]["Estimate"] | null;
            /** @description How far the nut would have to go if the saddle stayed. [unit] */
            nut_alone: components["schemas"]["Estimate"] | null;
            /** @description How sharp the open string was tuned; null where it can't be told. [cent] */
            tuning_offset: components["schemas"]["Estimate"] | null;
            /**
             * Rms Cents
             * @description Root mean square of the fretted readings against the open string as it was tuned. [cent]
             */
            rms_cents: number;
            /**
             * Remaining Rms Cents
             * @description The same after the moves of the answer; the tuner's own scatter is in it. [cent]
             */
            remaining_rms_cents: number;
            /**
             * Saddle Alone Rms Cents
             * @description The same after moving the saddle alone. [cent]
             */
            saddle_alone_rms_cents: number | null;
            /**
             * Nut Alone Rms Cents
             * @description The same after moving the nut alone. [cent]
             */
            nut_alone_rms_cents: number | null;
            /**
             * Chi Square
             * @description Weighted sum of squared residuals of the moves.
             */
            chi_square: number;
            /**
             * Degrees Of Freedom
             * @description Readings beyond those that the fit needs.
             */
            degrees_of_freedom: number;
            /**
             * P Value
             * @description How probable so large a chi-square is by chance; null without degrees of freedom.
             */
            p_value: number | null;
            /**
             * Readings
             * @description The readings, by fret.
             */
            readings: components["schemas"]["MendedReadingOut"][];
            /**
             * Statement
             * @description One sentence for the bench.
             */
            statement: string;
        };
        /**
         * StringIn
         * @description One string: measured (`unit_mass`, `R` or `kappa`) or described by material and gauge.
         */
        StringIn: {
            /**
             * Pitch
             * @description Open pitch: a name such as "E4", "F#3", "Bb2" (A4 = 440 Hz), or a number in hertz; needed unless `tuning`
             *     names it.
             * @example E4
             */
            pitch?: (string | number) | null;
            /**
             * Diameter
             * @description Outer diameter. [unit]
             * @example 0.712
             */
            diameter?: (number | string) | null;
            /**
             * Unit Mass
             * @description Mass per length, g/m (the same number as mg/mm); left out, it follows from `tension` or from the materials.
             */
            unit_mass?: number | null;
            /**
             * Tension
             * @description Tension at pitch, N; instead of `unit_mass`.
             */
            tension?: number | null;
            /**
             * R
             * @description Relative change of frequency with length in a stretch test, (L/f) df/dL.
             */
            R?: number | null;
            /**
             * Kappa
             * @description Relative change of tension with length, 2 R + 1; instead of `R`.
             */
            kappa?: number | null;
            /**
             * Core Material
             * @description What the core, or the whole of a plain string, is made of; needed where `R` and `kappa` are not known.
             * @example steel
             */
            core_material?: ("steel" | "nylon" | "fluorocarbon") | null;
            /**
             * Core Diameter
             * @description Diameter of the core, of a hexagonal one across the flats; left out, the string is taken as plain. [unit]
             * @example 0.010 in
             */
            core_diameter?: (number | string) | null;
            /**
             * Core Shape
             * @description Section of the core: a round or a hexagonal wire, or a bundle of filaments, which hardly resists bending.
             * @default round
             * @enum {string}
             */
            core_shape?: "round" | "hexagonal" | "multifilament";
            /**
             * Wraps
             * @description Windings, from the core outwards.
             * @default []
             */
            wraps?: components["schemas"]["WrapIn"][];
            /**
             * B0
             * @description Stiffness of the open string where it was measured, from its partials for instance.
             */
            B0?: number | null;
        };
        /**
         * StringIntonationOut
         * @description One string at all its frets.
         */
        StringIntonationOut: {
            /**
             * Pitch
             * @description Open pitch, as given.
             */
            pitch: string;
            /**
             * Frequency Hz
             * @description Frequency of the open string. [Hz]
             */
            frequency_hz: number;
            /**
             * Unit Mass
             * @description Mass per length. [g/m]
             */
            unit_mass: number;
            /**
             * Tension N
             * @description Tension at pitch. [N]
             */
            tension_n: number;
            /**
             * Kappa
             * @description Relative change of tension with length.
             */
            kappa: number;
            /**
             * B0
             * @description Stiffness of the open string, sqrt(kappa) s / X0 with s the radius of gyration of the section that bends.
             */
            B0: number;
            /**
             * Stiffness N
             * @description E A of what carries the tension, kappa times the tension. [N]
             */
            stiffness_n: number;
            /**
             * Breaking Share
             * @description Tension over the minimum breaking load (ASTM A228); null where no standard gives the strength.
             */
            breaking_share: number | null;
            /**
             * Unit Mass From
             * @description What unit mass and tension rest on: "measured", "tension" or "material".
             * @enum {string}
             */
            unit_mass_from: "measured" | "tension" | "material";
            /**
             * Kappa From
             * @description What kappa rests on: "R", "kappa" or the "modulus" of the core's material.
             * @enum {string}
             */
            kappa_from: "R" | "kappa" | "modulus";
            /**
             * B0 From
             * @description What B0 rests on: "measured", or the section that bends: the "core", the "whole_section" or
             *     "sliding_filaments".
             * @enum {string}
             */
            B0_from: "measured" | "core" | "whole_section" | "sliding_filaments";
            /**
             * Notes
             * @description What the numbers of this string rest on, and cautions.
             */
            notes: components["schemas"]["Note"][];
            /**
             * Saddle Setback
             * @description From the end of the scale to the break point on the saddle, positive away from the nut. [unit]
             */
            saddle_setback: number;
            /**
             * Nut Setback
             * @description From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]
             */
            nut_setback: number;
            /**
             * Saddle From Nut
             * @description From the nut's front edge to the break point, parallel to the fret plane. [unit]
             */
            saddle_from_nut: number;
            /**
             * Rms Cents
             * @description Root mean square of the errors at all frets. [cent]
             */
            rms_cents: number;
            /**
             * Worst Fret
             * @description Fret with the largest error.
             */
            worst_fret: number;
            /**
             * Worst Cents
             * @description Error there. [cent]
             */
            worst_cents: number;
            /**
             * Cents
             * @description Errors at every fret.
             */
            cents: components["schemas"]["SoundedNoteOut"][];
        };
        /**
         * StringLineOut
         * @description The line that one string follows.
         */
        StringLineOut: {
            /**
             * String
             * @description Number of the string; 1 is the highest.
             */
            string: number;
            /** @description Where it crosses the zero line of the pattern. */
            at_zero: components["schemas"]["PointOut"];
            /** @description Where it crosses the front edge of the nut. */
            at_nut: components["schemas"]["PointOut"];
            /** @description Where its scale ends: the true one, or the layout scale where there is no octave fret. */
            at_scale_end: components["schemas"]["PointOut"];
            /** @description Where it breaks over the saddle. */
            at_saddle: components["schemas"]["PointOut"];
            /**
             * Scale
             * @description Its own scale, from the zero line to the end, measured as `measured` says. [unit]
             */
            scale: number;
            /**
             * Saddle Setback
             * @description From the end of its scale to the break point, positive away from the nut. [unit]
             */
            saddle_setback: number;
        };
        /**
         * StringSetIn
         * @description Another set of strings, another tuning or another action for the same board.
         */
        StringSetIn: {
            /**
             * Name
             * @description Its name.
             * @example heavy set
             */
            name: string;
            /**
             * Strings
             * @description Its strings.
             * @example [
             *       {
             *         "R": 23.6,
             *         "diameter": "0.712 mm",
             *         "pitch": "E4",
             *         "unit_mass": 0.374
             *       }
             *     ]
             */
            strings: components["schemas"]["StringIn"][];
            /**
             * Tuning
             * @description Open pitches by the name of a common tuning, for strings that give no `pitch` of their own; as many strings as it has pitches, in this order: six_string_standard: E4 B3 G3 D3 A2 E2; six_string_dropped_d: E4 B3 G3 D3 A2 D2; seven_string_standard: E4 B3 G3 D3 A2 E2 B1; twelve_string_standard: E4 E4 B3 B3 G4 G3 D4 D3 A3 A2 E3 E2; baritone_six_string: B3 F#3 D3 A2 E2 B1; bass_four_string: G2 D2 A1 E1; bass_five_string: G2 D2 A1 E1 B0; bass_six_string: C3 G2 D2 A1 E1 B0; ukulele_high_g: A4 E4 C4 G4; ukulele_low_g: A4 E4 C4 G3; ukulele_baritone: E4 B3 G3 D3; mandolin: E5 A4 D4 G3; mandolin_paired: E5 E5 A4 A4 D4 D4 G3 G3; octave_mandolin: E4 A3 D3 G2; banjo_five_string: D4 B3 G3 D3 G4; banjo_tenor: A4 D4 G3 C3; banjo_plectrum: D4 B3 G3 C3.
             * @example six_string_standard
             */
            tuning?: ("six_string_standard" | "six_string_dropped_d" | "seven_string_standard" | "twelve_string_standard" | "baritone_six_string" | "bass_four_string" | "bass_five_string" | "bass_six_string" | "ukulele_high_g" | "ukulele_low_g" | "ukulele_baritone" | "mandolin" | "mandolin_paired" | "octave_mandolin" | "banjo_five_string" | "banjo_tenor" | "banjo_plectrum") | null;
            /** @description How high they lie; left out, as high as the first set. */
            heights?: components["schemas"]["HeightsIn"] | null;
        };
        /**
         * StringingIn
         * @description A string set, and how it lies over the board.
         */
        StringingIn: {
            /**
             * Name
             * @description What the set is called.
             * @default
             * @example Board 7
             */
            name?: string;
            /**
             * Strings
             * @description The strings, each with its pitch.
             * @example [
             *       {
             *         "R": 23.6,
             *         "diameter": "0.712 mm",
             *         "pitch": "E4",
             *         "unit_mass": 0.374
             *       }
             *     ]
             */
            strings: components["schemas"]["StringIn"][];
            /** @description How high they lie above the plane of the fret tops. */
            heights: components["schemas"]["HeightsIn"];
        };
        /**
         * SurfaceRadiusIn
         * @description A surface that is part of a cone.
         */
        SurfaceRadiusIn: {
            /**
             * Nut
             * @description Radius at the zero line. [unit]
             * @example 10 in
             */
            nut: number | string;
            /**
             * Last Fret
             * @description Radius at the last fret. [unit]
             * @example 16 in
             */
            last_fret: number | string;
        };
        /**
         * SuspectCentsOut
         * @description A reading that the others of its string contradict.
         */
        SuspectCentsOut: {
            /**
             * String
             * @description Number of the string.
             */
            string: number;
            /**
             * Fret
             * @description Number of the fret.
             */
            fret: number;
            /**
             * Deviation
             * @description Reading minus what the others predict. [cent]
             */
            deviation: number;
            /**
             * Explanation
             * @description What it may be.
             */
            explanation: string;
        };
        /**
         * SuspectOut
         * @description A reading that the rule cannot explain though it explains all the others; it was set aside.
         */
        SuspectOut: {
            /**
             * Fret
             * @description Fret that the reading ends at.
             */
            fret: number;
            /**
             * Reading
             * @description Its place in the list of readings, counted from 0.
             */
            reading: number;
            /**
             * Deviation
             * @description Reading minus the prediction of the others, positive where it reads long. [unit]
             */
            deviation: number;
            /**
             * Explanation
             * @description What it looks like, in words.
             */
            explanation: string;
        };
        /**
         * TagIn
         * @description What does the code on this label say?
         */
        TagIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /**
             * Text
             * @description The text as a scanner gives it.
             * @example TRUESCALE/1;id=BD-17;kind=board;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;crc=0F2E
             */
            text: string;
        };
        /**
         * TagOut
         * @description What the code on a label says.
         */
        TagOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /** @description The part, to be handed on to an assembly as it stands. */
            part: components["schemas"]["StatedPartOut"];
            /**
             * Uncertainty
             * @description Standard uncertainty (k = 1) of the true scale; null where it is taken at its word. [unit]
             */
            uncertainty: number | null;
            /**
             * Written In
             * @description Unit that the label's lengths are written in.
             * @enum {string}
             */
            written_in: "mm" | "in";
        };
        /**
         * TemperamentOut
         * @description A listed temperament from published sources.
         */
        TemperamentOut: {
            /**
             * Name
             * @description What a candidate of an identification calls it.
             */
            name: string;
            /**
             * Source
             * @description Where it was published.
             */
            source: string;
            /**
             * Cents
             * @description Cents above the open string, one for each fret; as they stand, the listed pitches of a layout. [cent]
             */
            cents: number[];
        };
        /**
         * ToolOriginIn
         * @description Which of several tools did this board come from?
         */
        ToolOriginIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /** @description Where the tool was told to cut, as a layout; or `commanded` with `true_scale`. */
            layout?: components["schemas"]["LaidOutIn"] | null;
            /**
             * Commanded
             * @description Instead: positions of the slots from the tool's zero, ascending.
             */
            commanded?: (number | string)[] | null;
            /**
             * True Scale
             * @description With `commanded`: the true scale that they were laid out for.
             */
            true_scale?: (number | string) | null;
            /**
             * Frets
             * @description With `commanded`: fret of each slot; left out: 1, 2, 3, ...
             */
            frets?: number[] | null;
            /**
             * Board
             * @description Positions of its slots from the tools' zero.
             */
            board: (number | string)[];
            /**
             * Signatures
             * @description The tools, each with an id of its own.
             */
            signatures: components["schemas"]["SignatureIn"][];
        };
        /**
         * ToolOriginOut
         * @description Which tool an unknown board came from.
         */
        ToolOriginOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Verdict
             * @description "established": one tool; "undecided" between tools; "none" of them.
             * @enum {string}
             */
            verdict: "established" | "undecided" | "none";
            /**
             * Tool
             * @description The tool, where one is established.
             */
            tool: string | null;
            /**
             * Statement
             * @description One sentence.
             */
            statement: string;
            /**
             * Matches
             * @description All the tools, the most probable first.
             */
            matches: components["schemas"]["SignatureMatchOut"][];
        };
        /**
         * ToolingDriftOut
         * @description What moved over the sequence of boards.
         */
        ToolingDriftOut: {
            /**
             * Fret
             * @description The slot that moved against the others; null where all moved together.
             */
            fret: number | null;
            /** @description How it moved. */
            drift: components["schemas"]["DriftOut"];
        };
        /**
         * ToolingIn
         * @description What does this tool do to its boards?
         */
        ToolingIn: {
            /**
             * Unit
             * @description Unit of the bare numbers in this request and of every length in the answer.
             * @default mm
             * @enum {string}
             */
            unit?: "mm" | "in";
            /** @description Where the tool was told to cut, as a layout; or `commanded` with `true_scale`. */
            layout?: components["schemas"]["LaidOutIn"] | null;
            /**
             * Commanded
             * @description Instead: positions of the slots from the tool's zero, ascending.
             */
            commanded?: (number | string)[] | null;
            /**
             * True Scale
             * @description With `commanded`: the true scale that they were laid out for.
             */
            true_scale?: (number | string) | null;
            /**
             * Frets
             * @description With `commanded`: fret of each slot; left out: 1, 2, 3, ...
             */
            frets?: number[] | null;
            /**
             * Id
             * @description Your name for the tool, which its signature bears.
             * @default this tool
             * @example gang saw
             */
            id?: string;
            /**
             * Boards
             * @description For each board, in the order of their making, the positions of its slots from the tool's own zero.
             * @example [
             *       [
             *         36.45,
             *         70.93
             *       ],
             *       [
             *         36.47,
             *         70.9
             *       ]
             *     ]
             */
            boards: (number | string)[][];
            /**
             * Instrument Uncertainty
             * @description Standard uncertainty of one reading (k = 1).
             * @default 0
             * @example 0.05 mm
             */
            instrument_uncertainty?: number | string;
            /**
             * Tolerance
             * @description How far a slot may lie from its commanded place (plus and minus); 0.1 mm if left out.
             * @default 0.1
             * @example 0.1 mm
             */
            tolerance?: number | string;
            /**
             * Significance
             * @description Probability of calling a drift, or a slot to be re-set, where there is none; over all slots together.
             * @default 0.01
             */
            significance?: number;
            /**
             * Unknown
             * @description A board of unknown origin, to be held against this tool and those of `signatures`.
             */
            unknown?: (number | string)[] | null;
            /**
             * Signatures
             * @description With `unknown`: other tools that it may have come from, each with an id of its own.
             */
            signatures?: components["schemas"]["SignatureIn"][];
            /**
             * Coverage
             * @description Probability that a stated interval holds.
             * @default 0.95
             */
            coverage?: number;
        };
        /**
         * ToolingOut
         * @description What a tool does to many boards.
         */
        ToolingOut: {
            /**
             * Unit
             * @description Unit of every length in this answer.
             * @default mm
             * @enum {string}
             */
            unit: "mm" | "in";
            /**
             * Boards
             * @description How many were measured.
             */
            boards: number;
            /**
             * Statement
             * @description One sentence for a work order.
             */
            statement: string;
            /**
             * Slots
             * @description Slot by slot.
             */
            slots: components["schemas"]["SlotStudyOut"][];
            /** @description Relative error of the tool's scale; null with fewer than three slots. [-] */
            scale_error: components["schemas"]["Estimate"] | null;
            /** @description How far its zero is off, positive away from the nut; null with fewer than three slots. [unit] */
            origin_shift: components["schemas"]["Estimate"] | null;
            /** @description Analysis of variance: repeatability within and between boards. */
            variances: components["schemas"]["VariancesOut"];
            /**
             * Instrument Uncertainty
             * @description Standard uncertainty of one reading. [unit]
             */
            instrument_uncertainty: number;
            /**
             * Tool Within
             * @description Standard deviation within boards with the instrument's share taken out. [unit]
             */
            tool_within: number;
            /**
             * Expanded Uncertainty
             * @description Of the product: twice the root mean square of all slots' deviations from their commanded places. [unit]
             */
            expanded_uncertainty: number;
            /**
             * Tolerance
             * @description How far a slot may lie from its commanded place. [unit]
             */
            tolerance: number;
            /**
             * Worst Cpk
             * @description The smallest Cpk of all slots; null where no slot has any spread. [-]
             */
            worst_cpk: number | null;
            /**
             * Drifts
             * @description What moved over the sequence.
             */
            drifts: components["schemas"]["ToolingDriftOut"][];
            /**
             * Resets
             * @description Slots that should be set again.
             */
            resets: components["schemas"]["ResetOut"][];
            /** @description What identifies this tool, for later questions. */
            signature: components["schemas"]["SignatureOut"];
            /** @description Which tool the unknown board came from, where one was given. */
            origin: components["schemas"]["ToolOriginOut"] | null;
            /**
             * Coverage
             * @description Probability that a stated interval holds. [-]
             */
            coverage: number;
            /**
             * Notes
             * @description Cautions.
             */
            notes: components["schemas"]["Note"][];
        };
        /**
         * TravelFitOut
         * @description What adjustable saddles of limited travel give.
         */
        TravelFitOut: {
            /**
             * Least
             * @description Setback at the end of the travel nearest to the nut. [unit]
             */
            least: number;
            /**
             * Most
             * @description Setback at the other end. [unit]
             */
            most: number;
            /**
             * All Reached
             * @description Whether every string gets its best.
             */
            all_reached: boolean;
            /**
             * Rms Cents
             * @description Root mean square of what remains, over all strings and the frets that count. [cent]
             */
            rms_cents: number;
            /**
             * Strings
             * @description Where every string breaks.
             */
            strings: components["schemas"]["BreakPointOut"][];
        };
        /**
         * TrueScalesOut
         * @description True scales of the outer strings.
         */
        TrueScalesOut: {
            /**
             * Bass
             * @description Of the lowest string; null where its rule has no octave fret. [unit]
             */
            bass: number | null;
            /**
             * Treble
             * @description Of string 1; null where its rule has no octave fret. [unit]
             */
            treble: number | null;
        };
        /**
         * VariancesOut
         * @description Two-way analysis of variance, slots by boards, one reading each; sums of squares in mm², whatever `unit` is.
         */
        VariancesOut: {
            /**
             * Slots Sum
             * @description Sum of squares between slots. [mm²]
             */
            slots_sum: number;
            /**
             * Boards Sum
             * @description Sum of squares between boards. [mm²]
             */
            boards_sum: number;
            /**
             * Residual Sum
             * @description What is left. [mm²]
             */
            residual_sum: number;
            /**
             * Slots Freedom
             * @description Degrees of freedom between slots.
             */
            slots_freedom: number;
            /**
             * Boards Freedom
             * @description Degrees of freedom between boards.
             */
            boards_freedom: number;
            /**
             * Residual Freedom
             * @description Degrees of freedom of what is left.
             */
            residual_freedom: number;
            /**
             * F Ratio
             * @description Mean square between boards over what is left; null with one slot. [-]
             */
            f_ratio: number | null;
            /**
             * P Value
             * @description Probability of a ratio as large if all boards lay alike. [-]
             */
            p_value: number | null;
            /**
             * Within
             * @description Repeatability within boards: standard deviation of a slot against the others of its board. [unit]
             */
            within: number;
            /**
             * Between
             * @description Repeatability between boards: standard deviation of a whole board against the others. [unit]
             */
            between: number;
        };
        /**
         * WeighedMeaningOut
         * @description One meaning of a label, and how it stands after the readings.
         */
        WeighedMeaningOut: {
            /**
             * Name
             * @description "exact": the number as it is; "rounded": to the nearest; "rounded_up": in favour of compensation;
             *     "string_length": with the saddle's setback in it; "converted": a round number of the other system; "other".
             * @enum {string}
             */
            name: "exact" | "rounded" | "rounded_up" | "string_length" | "converted" | "other";
            /** @description Spacing rule; null for "other". */
            rule: components["schemas"]["RuleOut"] | null;
            /**
             * Basis
             * @description Which length the label names.
             */
            basis: ("layout_scale" | "true_scale" | "string_length") | null;
            /**
             * Probability
             * @description Its probability after the readings; without any, how likely it is beforehand. [-]
             */
            probability: number;
            /**
             * Survives
             * @description Whether its probability is at least one minus the threshold; before any reading all stand.
             */
            survives: boolean;
            /**
             * True Scale
             * @description True scale that it stands for, the middle of `lower` and `upper`. [unit]
             */
            true_scale: number | null;
            /**
             * Lower
             * @description Smallest true scale that it stands for. [unit]
             */
            lower: number | null;
            /**
             * Upper
             * @description Largest true scale that it stands for. [unit]
             */
            upper: number | null;
            /**
             * Layout Scale
             * @description Length that the rule was applied to. [unit]
             */
            layout_scale: number | null;
            /**
             * Octave Distance
             * @description Distance from the nut to fret 12 to look for. [unit]
             */
            octave_distance: number | null;
            /**
             * Explanation
             * @description What it would mean, in words.
             */
            explanation: string;
        };
        /**
         * WhatIfOut
         * @description What a way of setting the saw costs, for every slot rounded to a step.
         */
        WhatIfOut: {
            /**
             * Method
             * @description All "running" from one origin, or each "fret_to_fret" from the slot before it.
             * @enum {string}
             */
            method: "running" | "fret_to_fret";
            /**
             * Step
             * @description What distances are rounded to. [unit]
             */
            step: number;
            /**
             * Worst Fret
             * @description Slot that is off most, in cents.
             */
            worst_fret: string;
            /**
             * Worst Error
             * @description By how much, positive towards the bridge. [unit]
             */
            worst_error: number;
            /**
             * Worst Cents
             * @description How much sharper that fret sounds for it; null where it would stand beyond the end of the scale. [cent]
             */
            worst_cents: number | null;
            /**
             * Expected At Last
             * @description Standard deviation to be expected at the last slot, with an even chance for every rounding. [unit]
             */
            expected_at_last: number;
        };
        /**
         * WidthsIn
         * @description Widths of the board, half on either side of the centre line.
         */
        WidthsIn: {
            /**
             * Nut
             * @description At the zero line. [unit]
             * @example 43 mm
             */
            nut: number | string;
            /**
             * Last Fret
             * @description At the last fret. [unit]
             * @example 56 mm
             */
            last_fret: number | string;
        };
        /**
         * WrapIn
         * @description One layer of winding, touching turns.
         */
        WrapIn: {
            /**
             * Material
             * @description What it is made of. A wrap that is sold as nickel is most often nickel-plated steel.
             * @example phosphor_bronze
             * @enum {string}
             */
            material: "nickel_plated_steel" | "nickel" | "steel" | "stainless_steel" | "phosphor_bronze" | "bronze_80_20" | "jewelry_bronze" | "silver_plated_copper" | "nylon";
            /**
             * Diameter
             * @description Diameter of the wire before it was ground; thickness of a ribbon. [unit]
             * @example 0.010 in
             */
            diameter: number | string;
            /**
             * Form
             * @description Section of the wire: round, a flat ribbon, or a round wire ground down (the outermost wrap only).
             * @default round
             * @enum {string}
             */
            form?: "round" | "flat" | "ground";
        };
        /**
         * TravelIn
         * @description How far the break point can be moved from where the part puts it: a slot's room, or a saddle's screws.
         */
        scalewright__wire__parts__TravelIn: {
            /**
             * Towards Nut
             * @description Towards the nut.
             * @default 0
             * @example 1 mm
             */
            towards_nut?: number | string;
            /**
             * Away From Nut
             * @description Away from the nut.
             * @default 0
             * @example 2 mm
             */
            away_from_nut?: number | string;
        };
        /**
         * TravelIn
         * @description How far adjustable saddles go, as saddle setbacks; all alike.
         */
        scalewright__wire__slot__TravelIn: {
            /**
             * Least
             * @description Setback at the end of the travel nearest to the nut. [unit]
             * @example 0 mm
             */
            least: number | string;
            /**
             * Most
             * @description Setback at the other end. [unit]
             * @example 5 mm
             */
            most: number | string;
        };
    };
    responses: never;
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    get_layout: {
        parameters: {
            query: {
                /**
                 * @description The scale, a number in `unit` or with its own unit (24.75in); `scale_basis` says which scale it is.
                 * @example 24 3/4 in
                 */
                scale: number | string;
                /**
                 * @description The spacing rule; `steps`, `divisor`, `cents` and `repeat` belong to one rule each.
                 * @example equal
                 */
                rule: "equal" | "eighteenth" | "divisor" | "listed";
                /**
                 * @description Number of frets, 1 to 60.
                 * @example 22
                 */
                frets: number;
                /** @description Unit of the bare numbers in this request and of every length in the answer. */
                unit?: "mm" | "in";
                /** @description Steps to the octave, for rule=equal; 12 if left out. */
                steps?: number;
                /** @description What the length that is left is divided by, for rule=divisor. */
                divisor?: number;
                /** @description Cents above the open string for each fret, for rule=listed; separated by commas or given repeatedly. */
                cents?: number[];
                /** @description Whether the listed pitches start again an octave higher, for rule=listed. */
                repeat?: boolean;
                /** @description Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret. */
                scale_basis?: "layout" | "true";
                /** @description Add the nearest mark of an inch rule with this finest graduation: 1, 2, 4 ... 128. */
                fractions?: 1 | 2 | 4 | 8 | 16 | 32 | 64 | 128;
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "csv";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description A fret layout. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    /** @description Names this answer, for If-None-Match. */
                    ETag?: string;
                    /** @description How long the answer may be kept. */
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LayoutOut"];
                    "text/csv": string;
                };
            };
            /** @description Not modified: the answer is the one named in If-None-Match. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    layout: {
        parameters: {
            query?: {
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "csv";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LayoutIn"];
            };
        };
        responses: {
            /** @description A fret layout. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LayoutOut"];
                    "text/csv": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    layout_batch: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/jsonl": string;
                "application/x-ndjson": string;
                "application/json": Record<string, never>[];
            };
        };
        responses: {
            /** @description A line for each question, and an end line. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/jsonl": string;
                    "application/x-ndjson": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    identification: {
        parameters: {
            query?: {
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "svg";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["IdentificationIn"];
            };
        };
        responses: {
            /** @description What a board's readings say about its spacing rule and scale. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["IdentificationOut"];
                    "image/svg+xml": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    identification_plan: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MeasuringCardIn"];
            };
        };
        responses: {
            /** @description Which frets to read on boards of a kind. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MeasuringCardOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    identification_batch: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/jsonl": string;
                "application/x-ndjson": string;
                "application/json": Record<string, never>[];
            };
        };
        responses: {
            /** @description A line for each question, and an end line. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/jsonl": string;
                    "application/x-ndjson": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    fingerboard: {
        parameters: {
            query?: {
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "csv" | "svg" | "dxf" | "pdf" | "png";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["FingerboardIn"];
            };
        };
        responses: {
            /** @description A board with all its lines. Its x axis is the centre line, its zero where the zero line crosses it. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["FingerboardOut"];
                    "text/csv": string;
                    "image/svg+xml": string;
                    "image/vnd.dxf": string;
                    "application/pdf": string;
                    "image/png": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    compensation: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["CompensationIn"];
            };
        };
        responses: {
            /** @description Saddle and nut positions of a set of strings. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CompensationOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    compensation_batch: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/jsonl": string;
                "application/x-ndjson": string;
                "application/json": Record<string, never>[];
            };
        };
        responses: {
            /** @description A line for each question, and an end line. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/jsonl": string;
                    "application/x-ndjson": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    intonation: {
        parameters: {
            query?: {
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "svg";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["IntonationIn"];
            };
        };
        responses: {
            /** @description How far out of tune a strung board is. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["IntonationOut"];
                    "image/svg+xml": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    diagnosis: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["DiagnosisIn"];
            };
        };
        responses: {
            /** @description What mends a board that plays out of tune. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DiagnosisOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    stretch_test: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["StretchTestIn"];
            };
        };
        responses: {
            /** @description What a stretch test says of a string. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["StretchTestOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    nominal: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NominalIn"];
            };
        };
        responses: {
            /** @description What a label can mean. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["NominalOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    nominal_batch: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/jsonl": string;
                "application/x-ndjson": string;
                "application/json": Record<string, never>[];
            };
        };
        responses: {
            /** @description A line for each question, and an end line. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/jsonl": string;
                    "application/x-ndjson": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    assembly: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["AssemblyIn"];
            };
        };
        responses: {
            /** @description Whether parts belong together. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["AssemblyOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    assembly_batch: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/jsonl": string;
                "application/x-ndjson": string;
                "application/json": Record<string, never>[];
            };
        };
        responses: {
            /** @description A line for each question, and an end line. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/jsonl": string;
                    "application/x-ndjson": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    conformity: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ConformityIn"];
            };
        };
        responses: {
            /** @description Whether a part is what it claims to be. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ConformityOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    label: {
        parameters: {
            query?: {
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "svg" | "pdf" | "png";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PrintedLabelIn"];
            };
        };
        responses: {
            /** @description A label as it is printed; the drawing itself comes as SVG, PNG or PDF. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PrintedLabelOut"];
                    "image/svg+xml": string;
                    "application/pdf": string;
                    "image/png": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    label_read: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TagIn"];
            };
        };
        responses: {
            /** @description What the code on a label says. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TagOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    label_batch: {
        parameters: {
            query?: {
                /** @description Unit of the bare numbers in this request and of every length in the answer. */
                unit?: "mm" | "in";
                /** @description Size of every label: a common one by its name; 70x36mm if left out. */
                size?: "40x20mm" | "50x25mm" | "57x32mm" | "62x29mm" | "70x36mm" | "100x50mm" | "2x1in" | "2.25x1.25in" | "4x2in";
                /** @description Width of every label, where its size is no common one; with `height`. */
                width?: number | string;
                /** @description Height of every label, with `width`. */
                height?: number | string;
                /** @description Dots per inch of the printer; the squares of the codes are whole numbers of dots. */
                dpi?: number;
                /** @description The paper, upright. */
                paper?: "A4" | "letter";
                /** @description Place of the first label on the first page, counted along the rows from the upper left. */
                start?: number;
                /** @description Between neighbours in a row. [unit] */
                column_gap?: number | string;
                /** @description Between rows. [unit] */
                row_gap?: number | string;
                /** @description From the left edge of the paper to the first column; left out, the labels are centred. [unit] */
                left?: number | string;
                /** @description From the upper edge of the paper to the first row; left out, the labels are centred. [unit] */
                top?: number | string;
                /**
                 * @description What becomes of lines that make no label: "refuse" all with a problem that names them, or print the others and
                 *     "list" those on pages at the end.
                 */
                bad_lines?: "refuse" | "list";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/jsonl": string;
                "application/x-ndjson": string;
                "application/json": Record<string, never>[];
            };
        };
        responses: {
            /** @description A line for each question, and an end line. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/jsonl": string;
                    "application/x-ndjson": string;
                    "application/pdf": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    label_pages: {
        parameters: {
            query?: {
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "pdf";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LabelPagesIn"];
            };
        };
        responses: {
            /** @description Pages of labels; the pages themselves come as PDF. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LabelPagesOut"];
                    "application/pdf": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    spec_sheet: {
        parameters: {
            query?: {
                /**
                 * @description Form of the answer; it beats the Accept header.
                 * @example json
                 */
                format?: "json" | "pdf" | "html";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SpecSheetIn"];
            };
        };
        responses: {
            /** @description All that a buyer of a part has to know of its scale. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SpecSheetOut"];
                    "application/pdf": string;
                    "text/html": string;
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    tooling: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ToolingIn"];
            };
        };
        responses: {
            /** @description What a tool does to many boards. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ToolingOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    tooling_origin: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ToolOriginIn"];
            };
        };
        responses: {
            /** @description Which tool an unknown board came from. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ToolOriginOut"];
                };
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body did not arrive in time; send it again, in one go. */
            408: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body is larger than this service takes; send less at once. */
            413: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The body has to be application/json in UTF-8, not compressed. */
            415: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    rules: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The spacing rules. */
            200: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    /** @description Names this answer, for If-None-Match. */
                    ETag?: string;
                    /** @description How long the answer may be kept. */
                    "Cache-Control"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RulesOut"];
                };
            };
            /** @description Not modified: the answer is the one named in If-None-Match. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once. */
            400: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description This service answers those who have a key: send yours in the header X-API-Key. */
            401: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Your key is good for other addresses than this one. */
            403: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The answer cannot be made in any media type that the Accept header or `format` names. */
            406: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description Path and query are longer than this service takes; use POST with a body. */
            414: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request can be read, but its values cannot be used; `errors` says where and what to change. */
            422: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description You have asked as often as you may for now; the header Retry-After says when to come again. */
            429: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The request headers are larger than this service takes. */
            431: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service failed; it is not the request's fault. Report it with the request id. */
            500: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    livez: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Successful Response */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Health"];
                };
            };
            /** @description This address answers other methods; the Allow header lists them. */
            405: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readyz: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Successful Response */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Health"];
                };
            };
            /** @description This address answers other methods; the Allow header lists them. */
            405: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
            /** @description The service has as much to do as it takes on; the header Retry-After says when to come again. */
            503: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    problem_kind: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /**
                 * @description The last part of a problem's `type`.
                 * @example invalid-request
                 */
                slug: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Successful Response */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ProblemKind"];
                };
            };
            /** @description Nothing lives at this address; the address / lists what there is. */
            404: {
                headers: {
                    /** @description Id of the request: the one that was sent, or a new one. */
                    "X-Request-ID"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
}
