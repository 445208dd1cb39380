//! Classic ratios and usual ranges, product by product.

use super::{Against, ClassicRatio, RatioItem};
use crate::science::formula::Role;

/// A ratio against flour.
const fn on_flour(
    title: &'static str,
    of: &'static [Role],
    range: [Option<f64>; 3],
    source: &'static str,
) -> RatioItem {
    on(title, of, Against::Flour, range, source)
}

/// A ratio; `range` is low, classic figure, high.
const fn on(
    title: &'static str,
    of: &'static [Role],
    against: Against,
    range: [Option<f64>; 3],
    source: &'static str,
) -> RatioItem {
    let [low, target, high] = range;
    RatioItem { title, of, against, low, target, high, source }
}

const CAKE: &str = "Cake balancing guidelines (teaching sheet)";
const MANLEY: &str = "from memory: Manley D., Technology of Biscuits, Crackers and Cookies";
const PYLER: &str = "from memory: Pyler E.J., Gorton L.A., Baking Science and Technology, 4th ed.";
const ON_BAKING: &str = "common practice; lower end Labensky S. et al., On Baking, eclair paste formula (weights)";
const CONFECTIONERY: &str = "Baking technology confectionery (web text), 6.1.1 puff pastry";
const COOKIES: &str = "Encyclopedia of Food Science and Technology, cookie and cracker formulas";
const TORTILLA: &str = "Ali H., flour tortilla article";
const PRACTICE: &str = "common practice";

/// The ratios that a formula can be compared with. Products without a settled ratio are not in it.
pub const CLASSIC_RATIOS: &[ClassicRatio] = &[
    ClassicRatio {
        product: "short_pastry",
        title: "3 flour : 2 fat : 1 water",
        items: &[
            on_flour("fat on flour", &[Role::Fat], [Some(60.0), Some(66.0), Some(70.0)], PRACTICE),
            on_flour("water on flour", &[Role::Water, Role::Liquid], [Some(28.0), Some(33.0), Some(36.0)], PRACTICE),
            on_flour("salt on flour", &[Role::Salt], [Some(1.0), Some(1.5), Some(2.0)], PRACTICE),
        ],
    },
    ClassicRatio {
        product: "sweet_paste",
        title: "1 sugar : 2 fat : 3 flour",
        items: &[
            on_flour(
                "sugar on flour",
                &[Role::Sugar],
                [None, Some(33.3), None],
                "student text, sweet paste 1:2:3 ratio",
            ),
            on_flour("fat on flour", &[Role::Fat], [None, Some(66.7), None], "student text, sweet paste 1:2:3 ratio"),
        ],
    },
    ClassicRatio {
        product: "choux",
        title: "2 liquid : 1 butter : 1 flour : 2 egg",
        items: &[
            on_flour(
                "liquid on flour",
                &[Role::Water, Role::Liquid],
                [Some(160.0), Some(200.0), Some(200.0)],
                ON_BAKING,
            ),
            on_flour("butter on flour", &[Role::Fat], [Some(70.0), Some(100.0), Some(100.0)], ON_BAKING),
            on_flour("egg on flour", &[Role::Egg], [Some(167.0), Some(200.0), Some(200.0)], ON_BAKING),
            on_flour(
                "salt on flour",
                &[Role::Salt],
                [None, Some(2.7), None],
                "Labensky S. et al., On Baking, eclair paste formula (weights)",
            ),
        ],
    },
    ClassicRatio {
        product: "pound_cake",
        title: "1 flour : 1 sugar : 1 butter : 1 egg",
        items: &[
            on_flour("sugar on flour", &[Role::Sugar], [None, Some(100.0), None], PRACTICE),
            on_flour("butter on flour", &[Role::Fat], [None, Some(100.0), None], PRACTICE),
            on_flour("egg on flour", &[Role::Egg], [None, Some(100.0), None], PRACTICE),
        ],
    },
    ClassicRatio {
        product: "puff_pastry",
        title: "half, three-quarter or full puff: 50, 75 or 100 fat on 100 flour",
        items: &[
            on_flour(
                "laminating fat on flour",
                &[Role::LaminatingFat],
                [Some(50.0), Some(75.0), Some(100.0)],
                CONFECTIONERY,
            ),
            on_flour("water on flour", &[Role::Water, Role::Liquid], [None, Some(60.0), None], CONFECTIONERY),
            on_flour("salt on flour", &[Role::Salt], [None, Some(1.0), None], CONFECTIONERY),
        ],
    },
    ClassicRatio {
        product: "lean_cake",
        title: "sugar at most flour, egg as fat, egg and liquid as flour",
        items: &[
            on_flour("sugar on flour", &[Role::Sugar], [None, None, Some(100.0)], CAKE),
            on("egg on fat", &[Role::Egg], Against::Roles(&[Role::Fat]), [None, Some(100.0), None], CAKE),
            on_flour(
                "egg and liquid on flour",
                &[Role::Egg, Role::Water, Role::Liquid],
                [None, Some(100.0), None],
                CAKE,
            ),
        ],
    },
    ClassicRatio {
        product: "high_ratio_cake",
        title: "sugar above flour, egg above fat, egg and liquid at least sugar",
        items: &[
            on_flour("sugar on flour", &[Role::Sugar], [Some(110.0), None, Some(160.0)], CAKE),
            on("egg on fat", &[Role::Egg], Against::Roles(&[Role::Fat]), [Some(100.0), None, None], CAKE),
            on(
                "egg and liquid on sugar",
                &[Role::Egg, Role::Water, Role::Liquid],
                Against::Roles(&[Role::Sugar]),
                [Some(100.0), None, None],
                CAKE,
            ),
        ],
    },
    ClassicRatio {
        product: "high_ratio_cocoa_cake",
        title: "as high-ratio cake, sugar up to 180 on 100 flour",
        items: &[
            on_flour("sugar on flour", &[Role::Sugar], [Some(110.0), None, Some(180.0)], CAKE),
            on("egg on fat", &[Role::Egg], Against::Roles(&[Role::Fat]), [Some(100.0), None, None], CAKE),
            on(
                "egg and liquid on sugar",
                &[Role::Egg, Role::Water, Role::Liquid],
                Against::Roles(&[Role::Sugar]),
                [Some(100.0), None, None],
                CAKE,
            ),
        ],
    },
    ClassicRatio {
        product: "white_pan_bread",
        title: "water and salt on flour",
        items: &[
            on_flour("water on flour", &[Role::Water, Role::Liquid], [Some(58.0), Some(62.0), Some(66.0)], PRACTICE),
            on_flour("salt on flour", &[Role::Salt], [Some(1.6), Some(1.9), Some(2.1)], PRACTICE),
        ],
    },
    ClassicRatio {
        product: "soft_roll",
        title: "sugar and fat on flour",
        items: &[
            on_flour("sugar on flour", &[Role::Sugar], [Some(8.0), Some(12.0), Some(16.0)], PYLER),
            on_flour("fat on flour", &[Role::Fat], [Some(4.0), Some(6.0), Some(10.0)], PYLER),
        ],
    },
    ClassicRatio {
        product: "flour_tortilla",
        title: "water, fat and salt on flour",
        items: &[
            on_flour("water on flour", &[Role::Water, Role::Liquid], [Some(45.0), None, Some(60.0)], TORTILLA),
            on_flour("fat on flour", &[Role::Fat], [Some(2.0), None, Some(10.0)], TORTILLA),
            on_flour("salt on flour", &[Role::Salt], [Some(1.5), None, Some(2.5)], TORTILLA),
        ],
    },
    ClassicRatio {
        product: "rotary_biscuit",
        title: "fat, sugar and added water on flour",
        items: &[
            on_flour("fat on flour", &[Role::Fat], [Some(20.0), Some(28.0), Some(35.0)], MANLEY),
            on_flour("sugar on flour", &[Role::Sugar], [Some(25.0), Some(33.0), Some(45.0)], MANLEY),
            on_flour("water on flour", &[Role::Water, Role::Liquid], [Some(5.0), Some(9.0), Some(14.0)], MANLEY),
        ],
    },
    ClassicRatio {
        product: "wire_cut_cookie",
        title: "sugar and fat on flour",
        items: &[
            on_flour("sugar on flour", &[Role::Sugar], [Some(40.0), Some(60.0), Some(80.0)], MANLEY),
            on_flour("fat on flour", &[Role::Fat], [Some(30.0), Some(45.0), Some(65.0)], MANLEY),
        ],
    },
    ClassicRatio {
        product: "deposited_cookie",
        title: "sugar, fat and whole egg on flour",
        items: &[
            on_flour("sugar on flour", &[Role::Sugar], [Some(35.0), None, Some(40.0)], COOKIES),
            on_flour("fat on flour", &[Role::Fat], [Some(65.0), None, Some(75.0)], COOKIES),
            on_flour("egg on flour", &[Role::Egg], [Some(15.0), None, Some(25.0)], COOKIES),
        ],
    },
    ClassicRatio {
        product: "sugar_snap_test_cookie",
        title: "60 sugar and 30 shortening on 100 flour",
        items: &[
            on_flour(
                "sugar on flour",
                &[Role::Sugar],
                [None, Some(60.0), None],
                "Western Wheat Quality Laboratory, cookie baking method (micro method, 40 g flour)",
            ),
            on_flour(
                "fat on flour",
                &[Role::Fat],
                [None, Some(30.0), None],
                "Western Wheat Quality Laboratory, cookie baking method (micro method, 40 g flour)",
            ),
        ],
    },
];
