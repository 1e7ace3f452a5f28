import { phraseBook } from './phrase-book.ts';
import { registerNameInSpanish } from './register-names.ts';
import { windCurveInSpanish } from './wind-curve.ts';

/** Equations that hold words; those of symbols alone are the same in every language. */
export const equationInSpanish = phraseBook(
  [
    // rot
    ['decay zone {}', 'zona de pudrición {}'],
    ['climate zone', 'zona de clima'],
    ['0 to 5 degC; -1 + 0.2 T to 20; -25 + 1.4 T above', '0 hasta 5 °C; -1 + 0.2 T hasta 20; -25 + 1.4 T más arriba'],
    ['f^0.3 g^0.2, floored at {}', 'f^0.3 g^0.2, no menos de {}'],
    ['table of treatment classes', 'tabla de clases de tratamiento'],
    ['r exp(shift) of acceptance {}', 'r exp(desplazamiento) de la aceptación {}'],
    ['median of the posterior', 'mediana de lo que se cree después'],
    [
      'median of its own posterior, given a fence of z_pace; {} of the fence',
      'mediana de lo que se cree de él, dada una cerca de z_pace; {} de la cerca',
    ],
    [
      'age less years stopped by treatment; half pace behind a liner',
      'edad menos los años detenidos por tratamiento; a medio ritmo detrás de un forro',
    ],
    [
      '5 (t / t_d0)^2 up to t_d0, then {} (t - t_lag); never under what was read; at most half the narrowest side',
      '5 (t / t_d0)^2 hasta t_d0, luego {} (t - t_lag); nunca menos de lo medido; como máximo la mitad del lado más angosto',
    ],
    [
      '5 (t / t_d0)^2 up to t_d0, then {} (t - t_lag); at most half the narrowest side',
      '5 (t / t_d0)^2 hasta t_d0, luego {} (t - t_lag); como máximo la mitad del lado más angosto',
    ],
    ['inspection', 'inspección'],
    ['as the office set it', 'como lo fijó la oficina'],
    ['from {} to {}, days / {}', 'desde {} hasta {}, días / {}'],
    ['the measurement', 'la medición'],
    ['installation', 'la instalación'],
    ['the day shown', 'el día mostrado'],
    ['the guards', 'los protectores'],
    // section
    ['section', 'sección'],
    [
      '{}, less pi v^4 / 64 over half the depth left; 0 where the shell is too thin',
      '{}, menos pi v^4 / 64 entre la mitad del fondo que queda; 0 donde la capa es demasiado fina',
    ],
    ['{}, less pi v^2 / 4', '{}, menos pi v^2 / 4'],
    ['residual over installed section modulus', 'módulo que queda entre módulo instalado'],
    // shape and wind
    ['geometry', 'geometría'],
    ['h less a gap above 0.05 h', 'h menos un hueco de más de 0.05 h'],
    ['as recorded, else the usual one of the style', 'como consta, si no, la usual del estilo'],
    ['posts every {} m unless recorded', 'postes cada {} m si no consta otra cosa'],
    ['table by s/h and B/s', 'tabla por s/h y B/s'],
    ['even load, rails simple between posts', 'carga pareja, travesaños simples entre postes'],
    [
      'stepped load, return corners on the first band, B/s >= 2',
      'carga escalonada, esquinas con retorno en la primera franja, B/s >= 2',
    ],
    ['flat-sided members by eps', 'piezas de caras planas según eps'],
    ['the larger of A and C', 'el mayor de A y C'],
    ['Cf eps L, the solid area only', 'Cf eps L, solo el área cerrada'],
    [
      '0.55 h where the infill reaches the ground, else h - s/2',
      '0.55 h donde las tablas llegan al suelo, si no, h - s/2',
    ],
    ['end A {}, end B {}', 'extremo A: {}; extremo B: {}'],
    ['return {} m', 'retorno de {} m'],
    ['free', 'libre'],
    ['building', 'edificio'],
    ['gate', 'portón'],
    ['unknown', 'no consta'],
    ['site', 'sitio'],
    ['solid freestanding walls and open signs', 'muros sólidos exentos y letreros abiertos'],
    ['rigid', 'rígido'],
    [
      'the same chain for the run of fence {}, which this corner post carries too',
      'los mismos pasos para el tramo de la cerca {}, que este poste de esquina también carga',
    ],
    // snap
    ['{} MPa of the species x grade {} x size or shape {}', '{} MPa de la especie x grado {} x tamaño o forma {}'],
    ['as entered', 'como se anotó'],
    ['found broken', 'se encontró roto'],
    ['the lesser of M_sleeve and {} above it', 'el menor de M_sleeve y {} por encima de ella'],
    ["the lesser of M_sleeve / 1.67 and Fb' S0 above it", "el menor de M_sleeve / 1.67 y Fb' S0 por encima de ella"],
    ['{}, e and k of the worse run', '{}, e y k del peor tramo'],
    ['{}, k and e of the worse run', '{}, k y e del peor tramo'],
    ['table of species', 'tabla de especies'],
    ['16d common stands in', 'se usa un clavo común 16d'],
    [
      'three rails, the middle one takes half; one bay at an end of the run, two elsewhere',
      'tres travesaños, el de en medio carga la mitad; un vano al extremo del tramo, dos en lo demás',
    ],
    ['{}, D_n and L_n in inches', '{}, D_n y L_n en pulgadas'],
    [
      'q x 2 x 1,380 lbf G^2.5 D_n L_n x CD 1.6 x CM 0.25 / share',
      'q x 2 x 1,380 lbf G^2.5 D_n L_n x CD 1.6 x CM 0.25 / parte',
    ],
    ['q x {} x 7,850 lbf G^2.5 D_n L_n / share', 'q x {} x 7,850 lbf G^2.5 D_n L_n / parte'],
    ['as this register learned it', 'como lo aprendió este registro'],
    ['standard deviation, model', 'desviación estándar, del modelo'],
    ['standard deviation, as this register learned it', 'desviación estándar, como la aprendió este registro'],
    // lean
    ['soil class', 'clase de suelo'],
    ['soil class less water, 9.81', 'clase de suelo menos el agua, 9.81'],
    ['footing', 'cimiento'],
    ['concrete diameter, else post diagonal', 'diámetro del concreto, si no, diagonal del poste'],
    ['collar found cracked: post diagonal', 'collar encontrado agrietado: diagonal del poste'],
    [
      '9 cu w f with H (e + 1.5 w + 0.5 f) = 2.25 w cu g^2, f + g = L - 1.5 w',
      '9 cu w f con H (e + 1.5 w + 0.5 f) = 2.25 w cu g^2, f + g = L - 1.5 w',
    ],
    ['the wider side, or the diameter', 'el lado más ancho, o el diámetro'],
    ['(w - b_c) / 2; nothing holds where it is 0 or less', '(w - b_c) / 2; nada sujeta donde es 0 o menos'],
    [
      'f_t / [1/(2 c_w) + 0.75 b_c / c_w^2] / (4/L + 6 e/L^2), L and e in mm',
      'f_t / [1/(2 c_w) + 0.75 b_c / c_w^2] / (4/L + 6 e/L^2), L y e en mm',
    ],
    // code check
    ['0.6 W for ultimate speeds, 1.0 W for nominal ones', '0.6 W para velocidades últimas, 1.0 W para nominales'],
    ['sqrt(least of {}, over gamma_W k)', 'sqrt(el menor de {}, entre gamma_W k)'],
    [
      'Table 1806.2; 1806.3.4 doubles it for isolated poles where allowed',
      'Tabla 1806.2; 1806.3.4 lo duplica para postes aislados donde se permite',
    ],
    ['0.6 x 16 psf x spacing x s against M_a / e and P', '0.6 x 16 psf x separación x s frente a M_a / e y P'],
    // hazard
    ['V_1 - a ln T_1, {}', 'V_1 - a ln T_1, {}'],
    ['(V_2 - V_1) / ln(T_2 / T_1), {}', '(V_2 - V_1) / ln(T_2 / T_1), {}'],
    ['V_50 (0.36 + 0.1 ln 12), {}', 'V_50 (0.36 + 0.1 ln 12), {}'],
    ['0.1 V_50, {}', '0.1 V_50, {}'],
    // standing and chance
    [
      'the least of V_bend, V_shear and V_rail, as far as given above',
      'el menor de V_bend, V_shear y V_rail, de los que se dan arriba',
    ],
    [
      'the lesser of V_foot and V_collar, as far as given above',
      'el menor de V_foot y V_collar, de los que se dan arriba',
    ],
    [
      'Harrell-Davis quantile at 0.5 over {} points of the belief, {}; at each point {}',
      'cuantil de Harrell-Davis en 0.5 sobre {} puntos de lo que se cree, {}; en cada punto, {}',
    ],
    ['unlike in weight, worth {} of equal weight', 'de peso distinto, que valen por {} de igual peso'],
    ['of equal weight', 'de igual peso'],
    ['the median post of the line', 'el poste mediano de la línea'],
    ['the weakest post of the ends', 'el poste más débil de los extremos'],
    [
      'the middle of the speeds is not the speed at the middles: the unknowns act on it unevenly, the quantile takes in the points near the middle, and at each point another post may speak for the group or another way to fail come first',
      'el medio de las velocidades no es la velocidad en los medios: lo que no se sabe actúa de forma despareja, el cuantil toma los puntos cercanos al medio, y en cada punto puede hablar otro poste por el grupo o llegar primero otra manera de fallar',
    ],
    ['weight of the points of the belief at which it is', 'peso de los puntos de lo que se cree en los que lo está'],
    [
      'sum over all posts of the chance that each is short, its own ln pace spread by {} and its own ln strength by {} about those of the fence. P(short) asks only of {}, n_short counts single weak posts: {}, so P(short) can be under 1 % where n_short is 1 or more',
      'suma, sobre todos los postes, de la probabilidad de que cada uno no aguante, con su ln ritmo disperso en {} y su ln resistencia en {} alrededor de los de la cerca. P(short) pregunta solo por {}, n_short cuenta postes débiles sueltos: {}; por eso P(short) puede ser menos del 1 % donde n_short es 1 o más',
    ],
    ['the weakest post of the ends, at median scatter', 'el poste más débil de los extremos, con dispersión mediana'],
    [
      'a line whose median post holds can have several weak posts that do not',
      'una línea cuyo poste mediano aguanta puede tener varios postes débiles que no',
    ],
    ['posts weaker than is usual of their fence add to it', 'los postes más débiles de lo usual en su cerca se suman'],
    [
      'V_snap against V_design, as built, now and within the look-ahead',
      'V_snap frente a V_design, como se construyó, ahora y en las temporadas que se miran adelante',
    ],
    ['half of {}, the spread of ln force', 'la mitad de {}, la dispersión de ln fuerza'],
    [
      'mean over z, standard normal, of 1 - exp(-w_season exp(-(V_snap exp(beta z) - u) / a))',
      'media sobre z, normal estándar, de 1 - exp(-w_season exp(-(V_snap exp(beta z) - u) / a))',
    ],
    [
      'the mean of the same over the points of the belief, each with its own speed and weighed by the chance that it survived the seasons from season 1 on: the weak points weigh most',
      'la media de lo mismo sobre los puntos de lo que se cree, cada uno con su velocidad y con el peso de su probabilidad de haber pasado las temporadas desde la 1: los puntos débiles pesan más',
    ],
  ],
  registerNameInSpanish,
  windCurveInSpanish,
);
